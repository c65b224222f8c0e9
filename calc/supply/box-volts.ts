import type { PhasePair } from '../plan-shape.ts';
import { addConstantCurrents, addDraw, PER_BUS } from './draws.ts';

/** Ohms of one line of a branch, end to end. */
export interface BranchOhms {
  readonly r: number;
  readonly x: number;
}

/** Voltage at one charger's box with everything on at once. Percents are of the nominal voltage of what feeds it. */
export interface BoxVolts {
  /** Line to line; of a three-phase charger the least of the three pairs. */
  readonly volts: number;
  /** From the equipment to the box, at the current that flows. */
  readonly branchDropPercent: number;
  /** From nominal at the equipment to the box: all feeders and transformers ahead of it, and the branch. */
  readonly totalDropPercent: number;
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

/** Scratch arrays for one box after the other. */
export interface Desk {
  readonly panel: Float64Array;
  readonly current: Float64Array;
  readonly flow: Float64Array;
  /** Least volts line to line where the branch begins, and where it ends. */
  readonly least: Float64Array;
}

export const newDesk = (): Desk => ({
  panel: new Float64Array(6),
  current: new Float64Array(PER_BUS),
  flow: new Float64Array(6),
  least: new Float64Array(2),
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
  desk: Desk = newDesk(),
): BoxVolts {
  leastVolts(ohms, volts, bus, load, desk);
  const atPanel = desk.least[0]!;
  const atBox = desk.least[1]!;
  return {
    volts: atBox,
    branchDropPercent: (100 * (atPanel - atBox)) / load.nominal,
    totalDropPercent: (100 * (load.nominal - atBox)) / load.nominal,
  };
}

/** `totalDropPercent` of the same alone: of many boxes that costs a fraction. */
export function totalDropPercent(
  ohms: BranchOhms,
  volts: Float64Array,
  bus: number,
  load: BoxLoad,
  desk: Desk,
): number {
  leastVolts(ohms, volts, bus, load, desk);
  return (100 * (load.nominal - desk.least[1]!)) / load.nominal;
}

function leastVolts(ohms: BranchOhms, volts: Float64Array, bus: number, load: BoxLoad, desk: Desk): void {
  const { lines, amps, powerFactor } = load;
  const { panel, current, flow, least } = desk;
  for (let k = 0; k < 6; k++) panel[k] = volts[6 * bus + k]!;
  current.fill(0);
  flow.fill(0);
  addDraw(current, 0, lines, amps * powerFactor, -amps * Math.sqrt(1 - powerFactor ** 2));
  addConstantCurrents(current, 0, panel, flow);
  let atPanel = Infinity;
  let atBox = Infinity;
  for (const [one, other] of PAIRS[lines]) {
    const re = panel[2 * one]! - panel[2 * other]!;
    const im = panel[2 * one + 1]! - panel[2 * other + 1]!;
    const flowRe = flow[2 * one]! - flow[2 * other]!;
    const flowIm = flow[2 * one + 1]! - flow[2 * other + 1]!;
    const boxRe = re - ohms.r * flowRe + ohms.x * flowIm;
    const boxIm = im - ohms.r * flowIm - ohms.x * flowRe;
    atPanel = Math.min(atPanel, re * re + im * im);
    atBox = Math.min(atBox, boxRe * boxRe + boxIm * boxIm);
  }
  least[0] = Math.sqrt(atPanel);
  least[1] = Math.sqrt(atBox);
}
