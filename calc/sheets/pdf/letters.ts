import { INCH } from './area.ts';

/** Height of capitals as a share of the size of the font. */
export const CAP = 0.7;

const capitals = (inches: number): number => (inches * INCH) / CAP;

/**
 * Sizes of lettering by the height of its capitals on the plotted sheet: nothing is under 0.08 in, notes are 3/32 in
 * (the national CAD standard's least for notes is 3/32 in; 0.08 in, 2 mm, is what a half-size print can still be read at:
 * common practice, no source).
 */
export const LETTERS = {
  small: capitals(0.08),
  note: capitals(3 / 32),
  head: capitals(1 / 8),
  title: capitals(3 / 16),
  name: capitals(1 / 4),
  number: capitals(7 / 16),
} as const;

/** From one base line to the next, as a share of the size of the font. */
export const LEADING = 1.22;
