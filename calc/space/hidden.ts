import { boxOf } from '../../routing/plane/box.ts';
import { type BoxIndex, boxIndex, positionsIn } from '../../routing/plane/box-index.ts';
import { type Obstacle, obstacleOf, spansInside } from '../../routing/plane/obstacle.ts';
import type { Point2 } from '../../routing/site/site.ts';
import type { SeenBlock } from './oblique.ts';
import { standsBefore } from './paint-order.ts';

/** Blocks that hide what lies behind them. */
export interface Hiding {
  readonly index: BoxIndex<SeenBlock>;
  readonly covers: readonly Obstacle[];
}

export const hidingBy = (blocks: readonly SeenBlock[]): Hiding => ({
  index: boxIndex(blocks, (one) => one),
  covers: blocks.map(({ silhouette }) => obstacleOf(silhouette)),
});

/**
 * The parts of a line of the drawing that are seen: what no block covers, of those that stand before `of`, or of all of
 * them where it lies on the ground.
 */
export function seenParts(
  a: Point2,
  b: Point2,
  { index, covers }: Hiding,
  of?: SeenBlock,
): (readonly [Point2, Point2])[] {
  const hidden: (readonly [number, number])[] = [];
  for (const i of positionsIn(index, boxOf([a, b]))) {
    const block = index.items[i]!;
    if (of && (block === of || standsBefore(block, of) !== true)) continue;
    hidden.push(...spansInside(covers[i]!, a[0], a[1], b[0], b[1]));
  }
  if (hidden.length === 0) return [[a, b]];
  const at = (t: number): Point2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  const parts: (readonly [Point2, Point2])[] = [];
  let open = 0;
  for (const [from, to] of hidden.sort((p, q) => p[0] - q[0])) {
    if (from > open + 1e-9) parts.push([at(open), at(from)]);
    open = Math.max(open, to);
  }
  if (open < 1 - 1e-9) parts.push([at(open), b]);
  return parts;
}

/** Whether a point of the drawing is covered by a block. */
export const isCovered = ([x, y]: Point2, { index, covers }: Hiding): boolean =>
  positionsIn(index, { minX: x, minY: y, maxX: x, maxY: y }).some(
    (i) => spansInside(covers[i]!, x - 1e-4, y, x + 1e-4, y).length > 0,
  );
