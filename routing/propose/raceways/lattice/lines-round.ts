import { boxOf } from '../../../plane/box.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import { BESIDE, type LatticeLines, linesAt } from './lines.ts';
import type { LotFrame } from './lot-frame.ts';

/** More nodes than these would keep the search for routes too long. */
const MOST_NODES = 12_000;
/** Lines nearer than this, feet, lead through the same gap. */
const SAME = 0.02;

/**
 * Lines of both ways by which a way is found round keep-outs wherever one leads along the lot and square to it: through the
 * entry and the boxes, beside each keep-out and in the middle between any two of their sides. Feet, in the frame of the lot.
 */
export function linesRound(
  site: Site,
  frame: LotFrame,
  entry: Point3,
  boxes: readonly Point3[],
): { readonly u: LatticeLines; readonly v: LatticeLines } {
  const flat = (at: readonly number[]): Point2 => frame.into([at[0]!, at[1]!]);
  const own = [entry, ...boxes].map(flat);
  const shut = site.keepouts.filter(({ blocks }) => blocks.includes('raceway'));
  const corners = shut.flatMap(({ outline }) => outline.map(flat));
  if (corners.length === 0)
    return {
      u: linesAt(
        own.map(([u]) => u),
        SAME,
      ),
      v: linesAt(
        own.map(([, v]) => v),
        SAME,
      ),
    };
  const { minX, minY, maxX, maxY } = boxOf([...own, ...corners]);
  const through = (axis: 0 | 1, low: number, high: number): readonly number[] => {
    const sides = [...new Set(corners.map((at) => at[axis]))].sort((a, b) => a - b);
    const between = sides.slice(1).map((side, i) => (side + sides[i]!) / 2);
    return [...own.map((at) => at[axis]), low - BESIDE, high + BESIDE, ...between];
  };
  const [us, vs] = [through(0, minX, maxX), through(1, minY, maxY)];
  for (let apart = SAME; ; apart *= 1.5) {
    const [u, v] = [linesAt(us, apart), linesAt(vs, apart)];
    if (u.at.length * v.at.length <= MOST_NODES || apart > 1000) return { u, v };
  }
}
