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
}

export const newDesk = (): Desk => ({
  panel: new Float64Array(6),
  current: new Float64Array(PER_BUS),
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
  desk: Desk = newDesk(),
): BoxVolts {
  const { lines, amps, powerFactor, nominal } = load;
  const { panel, current, flow } = desk;
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
    atPanel = Math.min(atPanel, Math.hypot(re, im));
    atBox = Math.min(atBox, Math.hypot(boxRe, boxIm));
  }
  return {
    volts: atBox,
    branchDropPercent: (100 * (atPanel - atBox)) / nominal,
    totalDropPercent: (100 * (nominal - atBox)) / nominal,
  };
}
