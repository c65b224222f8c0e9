import { INCH } from '../area.ts';
import type { Paper } from '../paper.ts';

/** Height of capitals as a share of the size of the font. */
export const CAP = 0.7;

/** From one base line to the next, as a share of the size of the font. */
export const LEADING = 1.22;

/** Sizes of the font for the kinds of lettering on a sheet, points. */
export interface LetterSizes {
  /** Figures of dimensions, labels of a plan, cells of tables. */
  readonly small: number;
  readonly note: number;
  readonly head: number;
  readonly title: number;
  readonly number: number;
}

const sizes = (inches: Readonly<Record<keyof LetterSizes, number>>): LetterSizes => {
  const points = (height: number): number => (height * INCH) / CAP;
  return {
    small: points(inches.small),
    note: points(inches.note),
    head: points(inches.head),
    title: points(inches.title),
    number: points(inches.number),
  };
};

/**
 * Lettering by the height of its capitals on the plotted sheet, inches. On ANSI D nothing is under 3/32 in, the least that
 * the national CAD standard has for notes (from memory), so that a print at half size can still be read. Tabloid is the
 * size that is carried, and is not reduced again: notes are 3/32 in, labels and tables 0.08 in (2 mm).
 */
export const LETTERS: Readonly<Record<Paper, LetterSizes>> = {
  'ANSI D': sizes({ small: 3 / 32, note: 7 / 64, head: 5 / 32, title: 7 / 32, number: 1 / 2 }),
  tabloid: sizes({ small: 0.08, note: 3 / 32, head: 1 / 8, title: 5 / 32, number: 3 / 8 }),
};
