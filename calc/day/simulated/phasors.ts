import type { ChargerLines, DayLimit } from '../day-input.ts';

/** A current of one ampere as a phasor: real and imaginary part. */
export type UnitCurrent = readonly [re: number, im: number];

const H = Math.sqrt(3) / 2;
const at = (re: number, im: number): UnitCurrent => [re, im];
const NONE = at(0, 0);

/** What one ampere of a charger is in lines A, B and C of a wye system: six directions, thirty degrees and their kin. */
const IN_LINES: Readonly<Record<ChargerLines, readonly [UnitCurrent, UnitCurrent, UnitCurrent]>> = {
  AB: [at(H, 0.5), at(-H, -0.5), NONE],
  BC: [NONE, at(0, -1), at(0, 1)],
  CA: [at(H, -0.5), NONE, at(-H, 0.5)],
  ABC: [at(1, 0), at(-0.5, -H), at(-0.5, H)],
};

/** Kilowatts of one ampere at unity power factor. */
export const kwPerAmp = (lines: ChargerLines, volts: number): number =>
  (volts * (lines === 'ABC' ? Math.sqrt(3) : 1)) / 1000;

/** Names of the rows of a limit. */
export const namesOfRows = ({ kind }: DayLimit): readonly string[] =>
  kind === 'lines' || kind === 'delta' ? ['A', 'B', 'C'] : ['all'];

/**
 * What one ampere of a charger is in each row of a limit. A delta primary carries the differences of the secondary's
 * lines, divided by the ratio: A - C, B - A, C - B.
 */
export function currentIn({ kind, ratio }: DayLimit, lines: ChargerLines, volts: number): readonly UnitCurrent[] {
  const [a, b, c] = IN_LINES[lines];
  const less = (p: UnitCurrent, q: UnitCurrent): UnitCurrent => at((p[0] - q[0]) / ratio, (p[1] - q[1]) / ratio);
  if (kind === 'lines') return [a, b, c];
  if (kind === 'delta') return [less(a, c), less(b, a), less(c, b)];
  return [at(kind === 'sum' ? 1 : kwPerAmp(lines, volts), 0)];
}
