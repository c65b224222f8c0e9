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

/**
 * Volts where a branch ends: the charger's current, as a phasor, lags the voltage across its lines where it is fed, and
 * meets the impedance of each of its conductors.
 * @param panel line-to-neutral phasors of the equipment, six numbers
 */
export function boxVolts(ohms: BranchOhms, panel: Float64Array, load: BoxLoad): BoxVolts {
  const { lines, amps, powerFactor, nominal } = load;
  const current = new Float64Array(PER_BUS);
  addDraw(current, 0, lines, amps * powerFactor, -amps * Math.sqrt(1 - powerFactor ** 2));
  const flow = new Float64Array(6);
  addConstantCurrents(current, 0, panel, flow);
  let atPanel = Infinity;
  let volts = Infinity;
  for (const [one, other] of PAIRS[lines]) {
    const re = panel[2 * one]! - panel[2 * other]!;
    const im = panel[2 * one + 1]! - panel[2 * other + 1]!;
    const flowRe = flow[2 * one]! - flow[2 * other]!;
    const flowIm = flow[2 * one + 1]! - flow[2 * other + 1]!;
    const boxRe = re - ohms.r * flowRe + ohms.x * flowIm;
    const boxIm = im - ohms.r * flowIm - ohms.x * flowRe;
    atPanel = Math.min(atPanel, Math.hypot(re, im));
    volts = Math.min(volts, Math.hypot(boxRe, boxIm));
  }
  return {
    volts,
    branchDropPercent: (100 * (atPanel - volts)) / nominal,
    totalDropPercent: (100 * (nominal - volts)) / nominal,
  };
}
