import type { Point2 } from '../../../../routing/site/site.ts';
import { PENS } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import type { Pen } from '../kit/pen.ts';

/** What draws a symbol: on a sheet, or on the page. */
export interface SymbolPen extends Pick<Pen, 'line' | 'lines' | 'circle' | 'arc' | 'fill' | 'fillArea' | 'text'> {
  readonly lettering: Pick<Lettering, 'sizes' | 'width'>;
}

/** Height of every symbol of a one-line, points at size 1; its line comes in at the top and goes out at the foot. */
export const SYMBOL_HEIGHT = 48;
/** Half the width of the widest, in the same. */
export const SYMBOL_HALF = 40;
export const INK = PENS.heavy;

export type Strokes = readonly (readonly Point2[])[];

/** Lays points given about the middle of a symbol at size 1 on the sheet. */
export const placing =
  ([x, y]: Point2, k: number) =>
  ([px, py]: Point2): Point2 => [x + k * px, y + k * py];

/** The line through a symbol: from its top to so far over its middle, and from as far under it to its foot. */
export const stubs = (half: number): Strokes => [
  [
    [0, SYMBOL_HEIGHT / 2],
    [0, half],
  ],
  [
    [0, -half],
    [0, -SYMBOL_HEIGHT / 2],
  ],
];
