import type { DayLimit, Lines } from './day-input.ts';

/** A current of one ampere as a phasor: real and imaginary part. */
export type Phasor = readonly [re: number, im: number];

const H = Math.sqrt(3) / 2;
const at = (re: number, im: number): Phasor => [re, im];
const NONE = at(0, 0);

/** What one ampere of a charger is in lines A, B and C of a wye system: six directions, thirty degrees and their kin. */
const IN_LINES: Readonly<Record<Lines, readonly [Phasor, Phasor, Phasor]>> = {
  AB: [at(H, 0.5), at(-H, -0.5), NONE],
  BC: [NONE, at(0, -1), at(0, 1)],
  CA: [at(H, -0.5), NONE, at(-H, 0.5)],
  ABC: [at(1, 0), at(-0.5, -H), at(-0.5, H)],
};

/** Kilowatts of one ampere at unity power factor. */
export const kwPerAmp = (lines: Lines, volts: number): number => (volts * (lines === 'ABC' ? Math.sqrt(3) : 1)) / 1000;

/** Names of the rows of a limit. */
export const rowsOf = ({ kind }: DayLimit): readonly string[] =>
  kind === 'lines' || kind === 'delta' ? ['A', 'B', 'C'] : ['all'];

/**
 * What one ampere of a charger is in each row of a limit. A delta primary carries the differences of the secondary's
 * lines, divided by the ratio: A - C, B - A, C - B.
 */
export function currentIn({ kind, ratio }: DayLimit, lines: Lines, volts: number): readonly Phasor[] {
  const [a, b, c] = IN_LINES[lines];
  const less = (p: Phasor, q: Phasor): Phasor => at((p[0] - q[0]) / ratio, (p[1] - q[1]) / ratio);
  if (kind === 'lines') return [a, b, c];
  if (kind === 'delta') return [less(a, c), less(b, a), less(c, b)];
  return [at(kind === 'sum' ? 1 : kwPerAmp(lines, volts), 0)];
}
