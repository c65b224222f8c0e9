import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { SetOutPoint } from './set-out-points.ts';
import type { AxisOffsets, PlaceOffsets, TapeReading } from './tape-lines.ts';

/** What a tape is read to: an eighth of an inch, or a millimeter. */
const TAPE = { inchParts: 8, decimals: 3 } as const;

export const tapeWords = (feet: number, units: Units): string => printLength(feet, units, TAPE);

/** "3 − 1' 0"", "on 3". */
export function tapeReadingWords({ line, feet }: TapeReading, units: Units): string {
  if (Math.abs(feet) < 1 / 192) return `on ${line}`;
  return `${line} ${feet < 0 ? '−' : '+'} ${tapeWords(Math.abs(feet), units)}`;
}

/** From its nearest line; the coordinate itself where there is none. */
export const axisWords = ({ nearest, at }: AxisOffsets, units: Units): string =>
  nearest ? tapeReadingWords(nearest, units) : tapeWords(at, units);

/** The two readings that add up to what lies between the lines: "2 + 26' 0" and 3 − 1' 0": 27' 0"". */
export function closingWords({ closing }: AxisOffsets, units: Units): string | null {
  if (!closing || closing.before.feet < 1 / 192) return null;
  const { before, after, sum } = closing;
  return `${tapeReadingWords(before, units)} and ${tapeReadingWords(after, units)}: ${tapeWords(sum, units)}`;
}

/** Up from grade, and down from the steel where some holds it: "11' 0" up, 1' 6" under PU9". */
export function heightWords({ at, steel }: SetOutPoint, units: Units): string {
  const up = at[2] < 0 ? `${tapeWords(-at[2], units)} below grade` : `${tapeWords(at[2], units)} up`;
  return steel ? `${up}, ${tapeWords(steel.under, units)} under ${steel.member}` : up;
}

/** The third side of the triangle of the two readings. */
export function tieWords({ x, y, tie }: PlaceOffsets, units: Units): string | null {
  if (tie === null || !x.nearest || !y.nearest) return null;
  if (Math.abs(x.nearest.feet) < 1 / 192 || Math.abs(y.nearest.feet) < 1 / 192) return null;
  return `${tapeWords(tie, units)} from where ${x.nearest.line} and ${y.nearest.line} cross`;
}
