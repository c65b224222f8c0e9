import { printTemperature } from '../../routing/site/numbers/temperature.ts';
import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import { ampacityAt, insulationColumn } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { largestDeviceFor, smallConductorLimit, standardRatingAtLeast } from '../tables/protection-of.ts';
import { cited } from '../tables/sections.ts';
import { sizesUpFrom } from '../tables/sizes.ts';
import type { TemperatureColumn } from '../tables/table.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { ampacity, type PowerConductor, type Surroundings, terminalColumnOf } from './ampacity.ts';
import { designAmps } from './design-amps.ts';
import { grounding } from './grounding.ts';

/** What a conductor has to do and where. */
export interface ConductorDuty extends Surroundings {
  readonly amps: number;
  readonly continuous: boolean;
  readonly breakerAmps: number;
  readonly metal: Metal;
  readonly insulation: string;
  /** Temperature that the terminals are marked for, °C; where they are not, 60 to 100 A (110.14(C)(1)). */
  readonly terminalC: TemperatureColumn;
}

export interface Branch {
  readonly breakerAmps: number;
  readonly conductor: PowerConductor;
  readonly grounding: { readonly size: string };
}

const loadOf = (amps: number, continuous: boolean) => ({
  continuous: continuous ? amps : 0,
  other: continuous ? 0 : amps,
});

/**
 * Standard rating for a load, 125% of a continuous one; Infinity past the largest.
 * @example
 * // NEC 2023 210.20(A), Table 240.6(A): 125% of 32 A is 40 A, a standard rating
 * branchBreaker(NEC, 32, true) // 40
 */
export const branchBreaker = (tables: CodeTables, amps: number, continuous: boolean): number =>
  standardRatingAtLeast(tables, designAmps(tables, loadOf(amps, continuous)));

/**
 * Smallest conductor for a duty, null where no single one of the tables will do: its ampacity at the terminals, without
 * factors, is at least the design load (210.19(A)(1)); with factors at least the load; and the breaker is one that may
 * protect it: at most the next standard rating above that ampacity to 800 A (240.4(B), (C)), and within the limits of
 * small conductors (240.4(D)).
 * @example
 * // NEC 2023 310.15: ten 6 AWG at 40 °C carry 75 x 0.91 x 0.5 = 34 A, too little for 40 A (240.4(B)); 4 AWG 43 A
 * branchConductor(NEC, {
 *   amps: 32,
 *   continuous: true,
 *   breakerAmps: 40,
 *   metal: 'copper',
 *   insulation: 'THWN-2',
 *   ambientC: 40,
 *   currentCarrying: 10,
 *   terminalC: 75,
 * }).size // '4'
 */
export function branchConductor(tables: CodeTables, duty: ConductorDuty, tell: Tell = SILENT): PowerConductor | null {
  const { amps, continuous, breakerAmps, metal, insulation, terminalC } = duty;
  const design = designAmps(tables, loadOf(amps, continuous));
  const terminals = terminalColumnOf(terminalC, insulationColumn(tables, insulation));
  const enough = (have: number, need: number): boolean => have >= need * (1 - 1e-9);
  const fits = (size: string): boolean => {
    const atTerminals = ampacityAt(tables, size, metal, terminals);
    if (atTerminals === null || !enough(atTerminals, design)) return false;
    if (breakerAmps > (smallConductorLimit(tables, size, metal) ?? Infinity)) return false;
    const corrected = ampacity(tables, { ...duty, conductor: { size, metal, insulation } })?.ampacity ?? 0;
    return enough(corrected, amps) && breakerAmps <= largestDeviceFor(tables, corrected);
  };
  const size = sizesUpFrom(tables.least.circuit[metal]).find(fits);
  if (size === undefined) return null;
  const conductor = { size, metal, insulation };
  ampacity(tables, { ...duty, conductor }, tell);
  tell(() => ({
    find: 'conductor',
    formula:
      'the smallest whose ampacity at the terminals is at least the design load, whose corrected ampacity is at least the load, and which the breaker may protect',
    values: {
      'design load': measured(design, 'A'),
      load: measured(amps, 'A'),
      breaker: measured(breakerAmps, 'A'),
      'at the terminals': `${ampacityAt(tables, size, metal, terminals)} A at ${printTemperature(terminals)}`,
    },
    result: `${size} ${metal} ${insulation}`,
    source: cited(tables, 'branchConductor', 'nextRating', 'smallConductors', 'terminals'),
  }));
  return conductor;
}

/**
 * Breaker, conductor and grounding conductor of one branch circuit, before any growth for voltage drop. Null where the
 * load is past the standard ratings or past what a single conductor of the tables carries.
 * @example
 * // NEC 2023 210.19(A)(1), 240.4, 250.122: 8 AWG has 50 A at 75 °C terminals and 55 x 0.91 x 0.8 = 40.04 A
 * branch(NEC, {
 *   amps: 32,
 *   continuous: true,
 *   metal: 'copper',
 *   insulation: 'THWN-2',
 *   ambientC: 40,
 *   currentCarrying: 6,
 *   terminalC: 75,
 * }) // { breakerAmps: 40, conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' }, grounding: { size: '10' } }
 */
export function branch(
  tables: CodeTables,
  input: Omit<ConductorDuty, 'breakerAmps'>,
  tell: Tell = SILENT,
): Branch | null {
  const { amps, continuous, metal } = input;
  const breakerAmps = branchBreaker(tables, amps, continuous);
  if (!Number.isFinite(breakerAmps)) return null;
  tell(() => ({
    find: 'design load',
    formula: continuous ? `load x ${tables.continuous.factor}, for it is continuous` : 'load',
    values: { load: measured(amps, 'A') },
    result: designAmps(tables, loadOf(amps, continuous)),
    unit: 'A',
    source: tables.continuous.source,
  }));
  tell(() => ({
    find: 'breaker',
    formula: 'smallest standard rating of at least the design load',
    values: { 'design load': measured(designAmps(tables, loadOf(amps, continuous)), 'A') },
    result: breakerAmps,
    unit: 'A',
    source: tables.standardRatings.source,
  }));
  const conductor = branchConductor(tables, { ...input, breakerAmps }, tell);
  if (conductor === null) return null;
  return {
    breakerAmps,
    conductor,
    grounding: grounding(tables, { breakerAmps, metal, conductor: conductor.size }, tell),
  };
}
