import type { Charger, Rules } from '../../routing/site/site.ts';
import type { Insulation } from '../../routing/site/vocabulary.ts';
import { SILENT, type Tell } from '../explain.ts';
import { measured } from '../measured.ts';
import type { CodeTables, RacewayKind } from '../tables/code-tables.ts';
import { findConductorArea, findImpedance, sizesUpFrom } from '../tables/lookup.ts';
import { ampacity, type PowerConductor, type Surroundings } from './ampacity.ts';
import { branch, branchBreaker, branchConductor } from './branch.ts';
import { grounding } from './grounding.ts';
import { type Drop, estimatedDrop, type Line, phasorDrop } from './line-drop.ts';
import { DROP_FORMULAS } from './voltage-drop.ts';

/** Conductor length of a branch by what its raceways are made of, ft, allowances included. */
export type LengthByKind = Readonly<Partial<Record<RacewayKind, number>>>;

/** Breaker, conductors and voltage drop of one branch. */
export interface BranchSize {
  readonly breakerAmps: number;
  readonly conductor: { readonly size: string; readonly metal: Rules['metal']; readonly insulation: Insulation };
  readonly grounding: { readonly size: string };
  readonly sizedBy: 'ampacity' | 'voltage drop';
  readonly factors: { readonly ambient: number; readonly bundling: number };
  readonly ampacity: number;
  /** Ohms of one line, end to end. */
  readonly ohms: { readonly r: number; readonly x: number };
  readonly drop: Drop;
}

/**
 * Sizes the branch of a charger: breaker at 125% of its amps, the smallest conductor that may carry it where it runs,
 * grown until the drop is within `rules.dropLimit.branch`, or to the largest size where none is. The drop is that of
 * phasors, in percent of the charger's nominal volts. Null where the tables hold no breaker or no single conductor for
 * the load.
 */
export function branchSize(
  tables: CodeTables,
  rules: Rules,
  charger: Charger,
  surroundings: Surroundings,
  lengths: LengthByKind,
  tell: Tell = SILENT,
): BranchSize | null {
  const { amps, phases, volts } = charger;
  const { metal, insulation, terminalC, powerFactor } = rules;
  const breakerAmps = branchBreaker(tables, amps, true);
  if (!Number.isFinite(breakerAmps)) return null;
  const duty = { ...surroundings, amps, continuous: true, breakerAmps, metal, insulation, terminalC };
  const needed = neededConductor(tables, duty);
  if (needed === null || !isWorkable(tables, needed)) return null;
  const workedWith = (size: string): Pick<BranchSize, 'ohms' | 'drop'> => {
    const ohms = lineOhms(tables, { ...needed, size }, lengths);
    return { ohms, drop: dropOf({ phases, volts, amps, ...ohms, powerFactor }) };
  };
  let size = needed.size;
  let worked = workedWith(size);
  for (const larger of sizesUpFrom(needed.size).slice(1)) {
    if (worked.drop.dropPercent <= rules.dropLimit.branch) break;
    if (!isWorkable(tables, { ...needed, size: larger })) continue;
    size = larger;
    worked = workedWith(size);
  }
  const conductor = { size, metal, insulation };
  const carried = ampacity(tables, { conductor, ...surroundings, terminalC });
  if (carried === null) return null;
  if (tell !== SILENT) {
    branch(tables, { ...duty, continuous: true }, tell);
    tellDrop(tables, rules, charger, { needed: needed.size, size, lengths, ...worked }, tell);
  }
  return {
    breakerAmps,
    conductor,
    grounding: grounding(tables, { breakerAmps, metal, conductor: size, conductorNeeded: needed.size }, tell),
    sizedBy: size === needed.size ? 'ampacity' : 'voltage drop',
    factors: { ambient: carried.temperatureFactor, bundling: carried.bundlingFactor },
    ampacity: carried.ampacity,
    ...worked,
  };
}

/**
 * The phasors' drop to half the volts. Past that, where no charger runs anyway and the phasors soon begin to promise more
 * volts for more impedance, the estimate's, which goes on growing.
 */
function dropOf(line: Line): Drop {
  const phasors = phasorDrop(line);
  const estimate = estimatedDrop(line);
  return estimate.dropVolts > line.volts / 2 ? estimate : phasors;
}

type Duty = Parameters<typeof branchConductor>[1];

const needs = new WeakMap<CodeTables, Map<string, PowerConductor | null>>();

/** `branchConductor`, which a lot asks for the same few duties thousands of times. */
function neededConductor(tables: CodeTables, duty: Duty): PowerConductor | null {
  let known = needs.get(tables);
  if (known === undefined) {
    known = new Map();
    needs.set(tables, known);
  }
  const key = `${duty.amps} ${duty.ambientC} ${duty.currentCarrying} ${duty.metal} ${duty.insulation} ${duty.terminalC}`;
  let conductor = known.get(key);
  if (conductor === undefined) {
    conductor = branchConductor(tables, duty);
    known.set(key, conductor);
  }
  return conductor;
}

function tellDrop(
  tables: CodeTables,
  rules: Rules,
  { amps, phases, volts }: Charger,
  found: Pick<BranchSize, 'ohms' | 'drop'> & {
    readonly needed: string;
    readonly size: string;
    readonly lengths: LengthByKind;
  },
  tell: Tell,
): void {
  const { needed, size, lengths, ohms, drop } = found;
  const { metal, powerFactor, dropLimit } = rules;
  tell(() => ({
    find: 'resistance and reactance of one line',
    formula: 'ohms per 1000 ft in each kind of raceway x conductor length in it / 1000, added up',
    values: {
      conductor: `${size} ${metal}`,
      ...Object.fromEntries(Object.entries(lengths).map(([kind, feet]) => [`length in ${kind}`, measured(feet, 'ft')])),
    },
    result: `${measured(ohms.r, 'ohm')} + j${measured(ohms.x, 'ohm')}`,
    source: tables.impedances.source,
  }));
  tell(() => ({
    find: 'voltage drop of the branch',
    formula: DROP_FORMULAS.exact,
    values: {
      volts: measured(volts, 'V'),
      amperes: measured(amps, 'A'),
      'power factor': powerFactor,
      k: phases === 3 ? 'sqrt 3' : '2, there and back',
      limit: `${dropLimit.branch}%`,
    },
    result: drop.dropPercent,
    unit: '%',
    source: "Ohm's law; site rule dropLimit.branch",
  }));
  if (size !== needed)
    tell(() => ({
      find: 'conductor grown for voltage drop',
      formula: 'the next sizes up until the drop is within its limit',
      values: { 'needed for its load': needed, limit: `${dropLimit.branch}%` },
      result: size,
      source: `${tables.dropAdvice.source}; site rule dropLimit.branch`,
    }));
}

/** True where the tables know the size's impedance and its area over the insulation. */
const isWorkable = (tables: CodeTables, { size, metal, insulation }: PowerConductor): boolean =>
  findImpedance(tables, size, metal, 'PVC') !== undefined && findConductorArea(tables, insulation, size) !== undefined;

function lineOhms(tables: CodeTables, conductor: PowerConductor, lengths: LengthByKind): { r: number; x: number } {
  let r = 0;
  let x = 0;
  for (const kind of ['PVC', 'aluminum', 'steel'] as const) {
    const feet = lengths[kind] ?? 0;
    if (feet === 0) continue;
    const ohms = findImpedance(tables, conductor.size, conductor.metal, kind);
    if (ohms === undefined) throw new RangeError(`no impedance of ${conductor.size} ${conductor.metal}`);
    r += (ohms.r * feet) / 1000;
    x += (ohms.x * feet) / 1000;
  }
  return { r, x };
}
