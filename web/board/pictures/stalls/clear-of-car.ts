import type { Box } from '../../../../routing/plane/box.ts';

/** Pixels between a letter and a line. */
const AIR = 2;

/**
 * Where the middle of a line of words stands that would cross an end of the car's outline: just inside of it, or as it
 * was wished where it crosses none. Pixels, y down; `high` is how high the letters stand.
 */
export function clearOfEnds(wished: number, high: number, { minY, maxY }: Pick<Box, 'minY' | 'maxY'>): number {
  const need = high / 2 + AIR;
  if (maxY - minY < 2 * need) return wished;
  if (Math.abs(wished - minY) < need) return minY + need;
  if (Math.abs(wished - maxY) < need) return maxY - need;
  return wished;
}

/** The longest of some words that stands between the sides of the car, its width given in pixels; null where none does. */
export function fitting(words: readonly string[], widthOf: (words: string) => number, width: number): string | null {
  return words.find((each) => widthOf(each) <= width - 2 * AIR) ?? null;
}
