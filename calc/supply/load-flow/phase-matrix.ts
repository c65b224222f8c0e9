import type { Phasor } from './phasor.ts';

/** A 3 x 3 complex matrix over lines A, B, C: 18 numbers, row by row, real and imaginary parts in turn. Never written to. */
export type PhaseMatrix = Float64Array;

const NOTHING: Phasor = { re: 0, im: 0 };

/** The matrix whose entry at row i, column j is `entry(i, j)`. */
export function phaseMatrix(entry: (row: number, column: number) => Phasor): PhaseMatrix {
  const matrix = new Float64Array(18);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      const { re, im } = entry(row, column);
      matrix[6 * row + 2 * column] = re;
      matrix[6 * row + 2 * column + 1] = im;
    }
  }
  return matrix;
}

/** Lines that do not couple, each with the impedance `z`, ohms: a three-wire feeder. */
export const uncoupled = (z: Phasor): PhaseMatrix => phaseMatrix((i, j) => (i === j ? z : NOTHING));

/**
 * Series impedance as line-to-neutral voltages see it, from the primitive matrix of four conductors A, B, C, N, ohms. The
 * neutral carries back what the lines carry out, so that its own drop moves all three voltages:
 * Z(i, j) = z(i, j) - z(i, N) - z(N, j) + z(N, N). No earth return.
 */
export function withNeutral(primitive: (row: number, column: number) => Phasor): PhaseMatrix {
  const part = (i: number, j: number, of: 're' | 'im'): number =>
    primitive(i, j)[of] - primitive(i, 3)[of] - primitive(3, j)[of] + primitive(3, 3)[of];
  return phaseMatrix((i, j) => ({ re: part(i, j, 're'), im: part(i, j, 'im') }));
}

/** A four-wire feeder whose conductors do not couple, each of them and the neutral with the impedance `z`, ohms. */
export const fourWire = (z: Phasor): PhaseMatrix => withNeutral((i, j) => (i === j ? z : NOTHING));

/** The matrix with rows for columns, nothing conjugated. */
export const transposed = (matrix: PhaseMatrix): PhaseMatrix =>
  phaseMatrix((i, j) => ({ re: matrix[6 * j + 2 * i]!, im: matrix[6 * j + 2 * i + 1]! }));

/** out[o..] += sign x matrix x v[at..]: three phasors in flat lists. */
export function addProduct(
  matrix: PhaseMatrix,
  v: Float64Array,
  at: number,
  out: Float64Array,
  o: number,
  sign: number,
): void {
  for (let row = 0; row < 3; row++) {
    let re = 0;
    let im = 0;
    for (let column = 0; column < 3; column++) {
      const mRe = matrix[6 * row + 2 * column]!;
      const mIm = matrix[6 * row + 2 * column + 1]!;
      const vRe = v[at + 2 * column]!;
      const vIm = v[at + 2 * column + 1]!;
      re += mRe * vRe - mIm * vIm;
      im += mRe * vIm + mIm * vRe;
    }
    out[o + 2 * row]! += sign * re;
    out[o + 2 * row + 1]! += sign * im;
  }
}
