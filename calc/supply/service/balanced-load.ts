import { lineAmps } from '../../circuits/line-amps.ts';
import type { LineTriple, LoadCalculation, ManagedLoad } from '../../plan-file/loads.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { type CountedLines, chargerLoad, loadCalculation } from './load-calculation.ts';

/** What a service feeds, in the numbers of a load calculation by hand. */
export interface BalancedLoad {
  /** Line to line. */
  readonly volts: number;
  readonly phases: 1 | 3;
  /** Chargers of one rating each; at the volts of the service, single-phase, where they do not say. */
  readonly chargers: readonly {
    readonly count: number;
    readonly amps: number;
    readonly volts?: number | undefined;
    readonly phases?: 1 | 3 | undefined;
  }[];
  /** Line current that energy management holds all of the chargers to, A. */
  readonly managedAmps?: number | undefined;
  readonly loads?:
    | readonly { readonly name?: string | undefined; readonly va: number; readonly continuous: boolean }[]
    | undefined;
  /** Greatest measured demand of what stands already, A. */
  readonly existingAmps?: number | undefined;
  /** Of the service, A. */
  readonly ratingAmps?: number | undefined;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * The load of a service counted every way, as if it lay evenly on its lines: chargers at their rating and for no less than
 * the code's least load, under the ceiling of energy management, with other loads and the measured demand of what stands
 * already; which decides, and whether it fits the rating. Volt-amperes and amperes of a line.
 * @example
 * // Hand-worked: 10 x max(208 x 32, 7,200) = 72,000 VA, / (sqrt 3 x 208) = 199.85 A, x 1.25 = 249.82 A
 * serviceLoad(NEC, { volts: 208, phases: 3, chargers: [{ count: 10, amps: 32 }], ratingAmps: 225 }).designAmps // 249.82
 */
export function serviceLoad(tables: CodeTables, of: BalancedLoad, tell: Tell = SILENT): LoadCalculation {
  const { volts, phases, managedAmps, loads = [], existingAmps = null, ratingAmps = null } = of;
  const groups = of.chargers.map(({ count, amps, volts: at = volts, phases: lines = 1 }) =>
    chargerLoad({ count, amps, volts: at, phases: lines }, tables.vehicleSupply.unitLoadVa),
  );
  const nameplateVa = sum(groups.map((group) => group.nameplateVa));
  const unitVa = sum(groups.map((group) => group.unitVa));
  const ceilingVa = managedAmps === undefined ? Infinity : managedAmps * volts * (phases === 3 ? Math.sqrt(3) : 1);
  const { factor } = tables.continuous;
  const otherVa = sum(loads.map(({ va }) => va));
  const otherDesignVa = sum(loads.map(({ va, continuous }) => (continuous ? factor * va : va)));
  const lines = (va: number): LineTriple => {
    const amps = lineAmps(va, volts, phases);
    return phases === 3 ? [amps, amps, amps] : [amps, amps, 0];
  };
  const counted = (chargerVa: number): CountedLines => {
    const held = Math.min(chargerVa, ceilingVa);
    return { kva: (held + otherVa) / 1000, once: lines(held + otherVa), design: lines(factor * held + otherDesignVa) };
  };
  const managed: readonly ManagedLoad[] =
    managedAmps === undefined ? [] : [{ equipment: 'the service', amps: managedAmps, ceilingVa, nameplateVa, unitVa }];
  return loadCalculation(
    tables,
    {
      source: 'service',
      at: 'service',
      volts,
      phases,
      service: ratingAmps === null ? [] : [{ id: 'service', ratingAmps, taken: false }],
      chargers: groups,
      withoutRun: 0,
      managed,
      loads: loads.map(({ name = '', va, continuous }, i) => ({ id: `load ${i + 1}`, name, va, continuous })),
      generationVa: 0,
      existingAmps,
      largestStepVa: Math.max(
        0,
        ...groups.map((group) => group.nameplateVa / group.count),
        ...loads.map(({ va }) => va),
      ),
      steps: [],
      connected: { kva: (nameplateVa + otherVa) / 1000, once: lines(nameplateVa + otherVa) },
      nameplate: counted(nameplateVa),
      unit: counted(unitVa),
    },
    tell,
  );
}
