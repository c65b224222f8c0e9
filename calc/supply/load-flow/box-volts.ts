import type { BranchOhms } from '../../branches/equipment-branches.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { addConstantCurrents, addDraw, PER_BUS } from './draws.ts';

/** Voltage at one charger's box with everything on at once. Percents are of the nominal voltage of what feeds it. */
export interface BoxVolts {
  /** Line to line; of a three-phase charger the least of the three pairs. */
  readonly volts: number;
  /** From the equipment to the box, at the current that flows. */
  readonly branchDropPercent: number;
  /** From nominal at the equipment to the box: all feeders and transformers ahead of it, and the branch. */
  readonly totalDropPercent: number;
  /** The same where the charger alone runs at its rating and the rest of what is managed with it keeps the ceiling. */
  readonly worstDropPercent: number;
}

export interface BoxLoad {
  readonly lines: PhasePair;
  /** Line amperes that flow. */
  readonly amps: number;
  readonly powerFactor: number;
  /** Of the equipment that feeds it, line to line. */
  readonly nominal: number;
}

/** Pairs of lines that a branch lies between: numbers of the two lines. */
const PAIRS: Readonly<Record<PhasePair, readonly (readonly [number, number])[]>> = {
  AB: [[0, 1]],
  BC: [[1, 2]],
  CA: [[2, 0]],
  ABC: [
    [0, 1],
    [1, 2],
    [2, 0],
  ],
};

/** A charger where its branch begins: the same for all of one bus, on the same lines, with the same current. */
interface Fed {
  volts: Float64Array | null;
  bus: number;
  amps: number;
  powerFactor: number;
  /** Square of the least volts line to line there. */
  square: number;
  /** For each pair of its lines: volts across it, and amperes of the one line less those of the other. */
  readonly across: Float64Array;
  readonly flow: Float64Array;
}

/** Room to work in, for one box after another while the volts of the buses stand: boxes fed alike share what feeds them. */
export interface BoxScratch {
  readonly panel: Float64Array;
  readonly current: Float64Array;
  readonly flow: Float64Array;
  readonly fed: Readonly<Record<PhasePair, Fed>>;
}

export const newDesk = (): BoxScratch => ({
  panel: new Float64Array(6),
  current: new Float64Array(PER_BUS),
  flow: new Float64Array(6),
  fed: { AB: nothing(), BC: nothing(), CA: nothing(), ABC: nothing() },
});

const nothing = (): Fed => ({
  volts: null,
  bus: 0,
  amps: 0,
  powerFactor: 1,
  square: 0,
  across: new Float64Array(6),
  flow: new Float64Array(6),
});

/**
 * Volts where a branch ends: the charger's current, as a phasor, lags the voltage across its lines where it is fed, and
 * meets the impedance of each of its conductors.
 * @param volts line-to-neutral phasors of every bus, six numbers each
 * @param bus that of the equipment
 */
export function boxVolts(
  ohms: BranchOhms,
  volts: Float64Array,
  bus: number,
  load: BoxLoad,
  desk: BoxScratch = newDesk(),
): Omit<BoxVolts, 'worstDropPercent'> {
  const fed = fedBy(volts, bus, load, desk);
  const atPanel = Math.sqrt(fed.square);
  const atBox = leastAtBox(ohms.r, ohms.x, fed, load.lines);
  return {
    volts: atBox,
    branchDropPercent: (100 * (atPanel - atBox)) / load.nominal,
    totalDropPercent: (100 * (load.nominal - atBox)) / load.nominal,
  };
}

/** `totalDropPercent` of the same alone, `r` and `x` being the branch's ohms: of many boxes that costs a fraction. */
export function totalDropPercent(
  r: number,
  x: number,
  volts: Float64Array,
  bus: number,
  load: BoxLoad,
  desk: BoxScratch,
): number {
  return (100 * (load.nominal - leastAtBox(r, x, fedBy(volts, bus, load, desk), load.lines))) / load.nominal;
}

/** Least volts line to line at the end of a branch. */
function leastAtBox(r: number, x: number, { across, flow }: Fed, lines: PhasePair): number {
  let square = Infinity;
  for (let at = 0; at < 2 * PAIRS[lines].length; at += 2) {
    const re = across[at]! - r * flow[at]! + x * flow[at + 1]!;
    const im = across[at + 1]! - r * flow[at + 1]! - x * flow[at]!;
    square = Math.min(square, re * re + im * im);
  }
  return Math.sqrt(square);
}

function fedBy(volts: Float64Array, bus: number, { lines, amps, powerFactor }: BoxLoad, desk: BoxScratch): Fed {
  const fed = desk.fed[lines];
  if (fed.volts === volts && fed.bus === bus && fed.amps === amps && fed.powerFactor === powerFactor) return fed;
  const { panel, current, flow } = desk;
  for (let k = 0; k < 6; k++) panel[k] = volts[6 * bus + k]!;
  current.fill(0);
  flow.fill(0);
  addDraw(current, 0, lines, amps * powerFactor, -amps * Math.sqrt(1 - powerFactor ** 2));
  addConstantCurrents(current, 0, panel, flow);
  fed.square = Infinity;
  PAIRS[lines].forEach(([one, other], pair) => {
    for (const part of [0, 1]) {
      fed.across[2 * pair + part] = panel[2 * one + part]! - panel[2 * other + part]!;
      fed.flow[2 * pair + part] = flow[2 * one + part]! - flow[2 * other + part]!;
    }
    const [re, im] = [fed.across[2 * pair]!, fed.across[2 * pair + 1]!];
    fed.square = Math.min(fed.square, re * re + im * im);
  });
  Object.assign(fed, { volts, bus, amps, powerFactor });
  return fed;
}
