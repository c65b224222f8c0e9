import type { CodeTables } from '../tables/code-tables.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { type DropConductor, type DropMethod, lineOhmsPerFoot } from './drop-conductor.ts';
import { collapsed, estimatedDrop, phasorDrop, type VoltDrop } from './line-drop.ts';

export type DropCircuit = DropMethod & {
  readonly phases: 1 | 3;
  /** Line to line where the circuit is fed. */
  readonly volts: number;
  readonly amps: number;
  readonly conductor: DropConductor;
};

/** Why the exact method has no answer. */
export const COLLAPSED =
  'the volts collapse: so long a circuit cannot carry this current at any voltage. Shorter, larger conductors, more volts or fewer amperes; the estimate (method impedance) goes on past it';

export const DROP_FORMULAS = {
  resistance: 'k x amperes x R x length',
  impedance: 'k x amperes x (R cos + X sin) x length',
  exact: '|V| - |V - k x I x (R + jX) x length|, I a phasor that lags V by the angle of the power factor',
} as const;

/**
 * Voltage drop of a circuit `length` feet long, one way: volts, percent of the volts where it is fed, and the volts left
 * at the load. RangeError where the tables have no figure for the conductor, and by the exact method past the collapse.
 * @example
 * // Hand-worked by NEC 2023 Chapter 9 Table 8: 2 x 32 A x 0.778 ohm per 1,000 ft x 150 ft
 * voltageDrop(NEC, {
 *   phases: 1,
 *   volts: 240,
 *   amps: 32,
 *   length: 150,
 *   conductor: { size: '8', metal: 'copper' },
 *   method: 'resistance',
 * }) // { dropVolts: 7.4688, dropPercent: 3.112, voltsAtLoad: 232.5312 }
 */
export function voltageDrop(
  tables: CodeTables,
  input: DropCircuit & { readonly length: number },
  tell: Tell = SILENT,
): VoltDrop {
  const { phases, volts, amps, length, conductor, method } = input;
  if (!(volts > 0)) throw new RangeError(`volts must be over 0, got ${volts}`);
  const { r, x, powerFactor } = lineOhmsPerFoot(tables, conductor, input, tell);
  const line = { phases, volts, amps, r: r * length, x: x * length, powerFactor };
  if (method === 'exact' && collapsed(line)) throw new RangeError(COLLAPSED);
  const drop = method === 'exact' ? phasorDrop(line) : estimatedDrop(line);
  tell(() => ({
    find: 'voltage drop',
    formula: DROP_FORMULAS[method],
    values: {
      k: phases === 3 ? 'sqrt 3' : '2, there and back',
      amperes: measured(amps, 'A'),
      length: measured(length, 'ft one way'),
      'line resistance': measured(line.r, 'ohm'),
      ...(method === 'resistance' ? {} : { 'line reactance': measured(line.x, 'ohm'), 'power factor': powerFactor }),
    },
    result: drop.dropVolts,
    unit: 'V',
    source: method === 'impedance' ? `${tables.impedances.source} Note 2` : "Ohm's law",
  }));
  tell(() => ({
    find: 'voltage drop in %',
    formula: 'drop / volts where the circuit is fed',
    values: { drop: measured(drop.dropVolts, 'V'), volts: measured(volts, 'V') },
    result: drop.dropPercent,
    unit: '%',
    source: 'definition',
  }));
  return drop;
}
