import type { Point2 } from '../../../routing/site/site.ts';
import type { DrawnSymbol } from './drawing.ts';

/** Strokes of a symbol about its own middle, feet of the site: circles and polylines. */
export interface SymbolStrokes {
  readonly circles: readonly { readonly radius: number; readonly filled: boolean }[];
  readonly lines: readonly { readonly points: readonly Point2[]; readonly closed: boolean }[];
}

const square = (half: number): readonly Point2[] => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];

/**
 * No standard symbol exists for a cord drop or a retractor, so the legend of each sheet shows these: the junction box a
 * square, the retractor a ring with a dot in it, a pull point a square with its diagonals, a junction of conduits a dot in
 * a small ring, a handhole two squares one in the other.
 */
export const SYMBOLS: Readonly<Record<DrawnSymbol['symbol'], SymbolStrokes>> = {
  box: { circles: [], lines: [{ points: square(0.45), closed: true }] },
  retractor: {
    circles: [
      { radius: 0.75, filled: false },
      { radius: 0.2, filled: true },
    ],
    lines: [],
  },
  junction: {
    circles: [
      { radius: 0.35, filled: false },
      { radius: 0.15, filled: true },
    ],
    lines: [],
  },
  handhole: {
    circles: [],
    lines: [
      { points: square(0.6), closed: true },
      { points: square(0.4), closed: true },
    ],
  },
  'pull-point': {
    circles: [],
    lines: [
      { points: square(0.5), closed: true },
      {
        points: [
          [-0.5, -0.5],
          [0.5, 0.5],
        ],
        closed: false,
      },
      {
        points: [
          [-0.5, 0.5],
          [0.5, -0.5],
        ],
        closed: false,
      },
    ],
  },
};
