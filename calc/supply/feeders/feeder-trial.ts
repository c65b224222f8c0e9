import type { BranchOhms } from '../../branches/equipment-branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { boxVolts } from '../load-flow/box-volts.ts';
import { addDraw, type Draws, noDraws } from '../load-flow/draws.ts';
import { fourWire, uncoupled } from '../load-flow/phase-matrix.ts';
import { magnitudeAt, type Phasor } from '../load-flow/phasor.ts';
import { type Bus, solve } from '../load-flow/sweep.ts';
import { greatestLine } from '../panels/demand.ts';
import { nominalPhasors, threePhaseSystem, toNeutral } from '../tree/system.ts';
import { threePhaseWinding } from '../tree/windings.ts';

/** A feeder with, perhaps, a transformer at its far end, and the panel of chargers behind. */
export interface TrialSupply {
  readonly volts: number;
  /** Ohms of one line of the feeder. */
  readonly feederOhms: Phasor;
  /** Null where the chargers are fed at the feeder's voltage. */
  readonly transformer: { readonly secondaryVolts: number; readonly ohms: Phasor } | null;
}

/** Equal chargers spread over the pairs, beside other balanced load, all on at once. */
export interface TrialLoad {
  readonly chargers: number;
  readonly amps: number;
  readonly powerFactor: number;
  readonly otherVa: number;
  readonly branch: BranchOhms;
}

/** Greatest line currents at nominal voltage, A: at the head of the feeder, and out of the panel. */
export function trialAmps(supply: TrialSupply, load: TrialLoad): { readonly feeder: number; readonly panel: number } {
  const buses = busesOf(supply).map((bus) => ({ ...bus, impedance: null }));
  const solved = solve(buses, drawsOf(load, buses.length));
  return { feeder: greatestLine(solved.into, 1), panel: greatestLine(solved.out, buses.length - 1) };
}

/** Watts lost in a feeder and in the transformer behind it. */
export interface TrialLosses {
  readonly feeder: number;
  readonly windings: number;
  readonly core: number;
}

/**
 * Watts lost with some load on: the square of each line's current at nominal voltage times the resistance that it
 * flows through.
 * @param core what the core of the transformer takes, W
 */
export function trialLosses(supply: TrialSupply, load: TrialLoad, core: number): TrialLosses {
  const buses = busesOf(supply).map((bus) => ({ ...bus, impedance: null }));
  const solved = solve(buses, drawsOf(load, buses.length));
  const squares = (amps: Float64Array, bus: number): number =>
    [0, 1, 2].reduce((sum, line) => sum + magnitudeAt(amps, 3 * bus + line) ** 2, 0);
  return {
    feeder: squares(solved.into, 1) * supply.feederOhms.re,
    windings: supply.transformer === null ? 0 : squares(solved.out, buses.length - 1) * supply.transformer.ohms.re,
    core,
  };
}

/**
 * Drop from nominal to the worst box, percent of the panel's nominal volts, its own charger at its rating while the sum of
 * all stays what it is; Infinity where no voltages carry the load.
 */
export function trialDrop(supply: TrialSupply, load: TrialLoad, ratedAmps: number): number {
  const buses = busesOf(supply);
  const last = buses.length - 1;
  const solved = solve(buses, drawsOf(load, buses.length));
  if (solved.unsettled.length > 0) return Infinity;
  const { powerFactor, branch } = load;
  const amps = Math.max(load.amps, ratedAmps);
  const nominal = panelVolts(supply);
  return Math.max(
    ...PAIRS.map(
      (lines) => boxVolts(branch, solved.volts, last, { lines, amps, powerFactor, nominal }).totalDropPercent,
    ),
  );
}

const PAIRS = ['AB', 'BC', 'CA'] as const;

const panelVolts = ({ volts, transformer }: TrialSupply): number => transformer?.secondaryVolts ?? volts;

/** Source, end of the feeder and, behind a transformer, its secondary. */
function busesOf({ volts, feederOhms, transformer }: TrialSupply): readonly Bus[] {
  const system = threePhaseSystem(volts);
  const held = new Float64Array(nominalPhasors(system).flatMap(({ re, im }) => [re, im]));
  const nominal = toNeutral(system);
  const impedance = system.neutral === null ? uncoupled(feederOhms) : fourWire(feederOhms);
  const source = { parent: -1, nominal, held, ratio: null, back: null, impedance: null };
  const end = { parent: 0, nominal, held: null, ratio: null, back: null, impedance };
  if (transformer === null) return [source, end];
  const winding = threePhaseWinding('delta-wye', transformer.secondaryVolts / volts, transformer.ohms);
  const secondary = toNeutral(threePhaseSystem(transformer.secondaryVolts));
  return [source, end, { parent: 1, nominal: secondary, held: null, ...winding }];
}

function drawsOf({ chargers, amps, powerFactor, otherVa }: TrialLoad, buses: number): Draws {
  const draws = noDraws(buses);
  const behind = Math.sqrt(1 - powerFactor ** 2);
  PAIRS.forEach((pair, leg) => {
    const sum = amps * Math.floor((chargers + 2 - leg) / 3);
    addDraw(draws.current, buses - 1, pair, sum * powerFactor, -sum * behind);
  });
  addDraw(draws.power, buses - 1, 'ABC', otherVa, 0);
  return draws;
}

/** Largest whole number up to `most` for which a claim holds that holds for all smaller ones; 0 where it holds for none. */
export function largestWhole(most: number, holds: (count: number) => boolean): number {
  let low = 0;
  let high = most;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Middle of the plausible band of percent impedance of a transformer size: for plans without a nameplate. */
export function usualImpedance(tables: CodeTables, kva: number): number {
  const rows = tables.threePhaseImpedances.rows;
  const row = rows.find((other) => kva <= other.kva) ?? rows.at(-1);
  if (row === undefined) throw new RangeError(`${tables.edition} tables hold no transformer impedances`);
  return (row.z[0] + row.z[1]) / 2;
}
