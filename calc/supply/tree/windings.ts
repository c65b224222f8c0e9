import { type PhaseMatrix, phaseMatrix, transposed, uncoupled } from '../load-flow/phase-matrix.ts';
import type { Phasor } from '../load-flow/phasor.ts';

/**
 * How a transformer is wound, high or low side alike. `delta-wye` is the one of the site file: secondary AN follows
 * primary AB. `delta-wye-lag` is the one of the published test feeder: secondary AN follows primary AC.
 */
export type Connection = 'delta-wye' | 'delta-wye-lag' | 'wye-wye' | 'delta-delta';

/** A two-port: secondary volts = ratio x primary volts - impedance x secondary amps; primary amps = back x secondary amps. */
export interface Winding {
  readonly ratio: PhaseMatrix;
  readonly back: PhaseMatrix;
  readonly impedance: PhaseMatrix;
}

/** Ohms per phase on the secondary from percent impedance and X/R on the rating: Z% V² / kVA. */
export function windingOhms(
  percent: number,
  xr: number,
  rating: { readonly kva: number; readonly secondaryVolts: number },
): Phasor {
  const ohms = ((percent / 100) * rating.secondaryVolts ** 2) / (rating.kva * 1000);
  const re = ohms / Math.hypot(1, xr);
  return { re, im: xr * re };
}

// Real turns ratios keep power only where the currents go back through the transpose.
const wound = (ratio: PhaseMatrix, impedance: PhaseMatrix): Winding => ({ ratio, back: transposed(ratio), impedance });

const real = (entry: (row: number, column: number) => number): PhaseMatrix =>
  phaseMatrix((i, j) => ({ re: entry(i, j), im: 0 }));

/**
 * A three-phase transformer as a two-port over line-to-neutral voltages, without magnetising current.
 * @param turns secondary over primary line-to-line volts
 * @param ohms per phase of the wye that stands for the secondary
 * Source: the exact connection matrices of W. H. Kersting, Distribution System Modeling and Analysis, ch. 8 (from memory).
 */
export function threePhaseWinding(connection: Connection, turns: number, ohms: Phasor): Winding {
  return wound(
    real((i, j) => turns * RATIOS[connection]((j - i + 3) % 3)),
    uncoupled(ohms),
  );
}

const PER_PAIR = 1 / Math.sqrt(3);

// By how many lines ahead of the secondary line the primary one is: each ratio is the same for A, B and C in turn.
const RATIOS: Readonly<Record<Connection, (ahead: number) => number>> = {
  'delta-wye': (ahead) => (ahead === 0 ? PER_PAIR : ahead === 1 ? -PER_PAIR : 0),
  'delta-wye-lag': (ahead) => (ahead === 0 ? PER_PAIR : ahead === 2 ? -PER_PAIR : 0),
  'wye-wye': (ahead) => (ahead === 0 ? 1 : 0),
  'delta-delta': (ahead) => (ahead === 0 ? 2 / 3 : -1 / 3),
};

/**
 * A single-phase transformer, primary across two lines, secondary of lines A and B with a neutral in the middle. Half of
 * the impedance is put in each line, which is exact for loads across both and near for those to neutral.
 * @param pair numbers of the two primary lines
 * @param turns whole secondary over primary volts
 * @param ohms of the whole secondary
 */
export function singlePhaseWinding(pair: readonly [number, number], turns: number, ohms: Phasor): Winding {
  const half = turns / 2;
  const ratio = real((i, j) => {
    if (i === 2) return 0;
    const side = i === 0 ? half : -half;
    return j === pair[0] ? side : j === pair[1] ? -side : 0;
  });
  const z = { re: ohms.re / 2, im: ohms.im / 2 };
  return wound(
    ratio,
    phaseMatrix((i, j) => (i === j && i < 2 ? z : { re: 0, im: 0 })),
  );
}
