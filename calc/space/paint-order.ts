import { boxIndex, positionsIn } from '../../routing/plane/box-index.ts';
import type { Point2 } from '../../routing/site/site.ts';
import type { SeenBlock } from './oblique.ts';

/**
 * Whether `a` stands before `b` where raised blocks cover the same part of the drawing: at an x that both have, the one
 * nearer to the eye has the smaller y. Null where no x is common to both. Their outlines do not overlap.
 */
export function standsBefore(a: SeenBlock, b: SeenBlock): boolean | null {
  const from = Math.max(a.minX, b.minX);
  const to = Math.min(a.maxX, b.maxX);
  if (to - from < 1e-9) return null;
  const x = (from + to) / 2;
  return middleAt(a.block.outline, x) < middleAt(b.block.outline, x);
}

/** The middle of a convex outline at an x that it has. */
function middleAt(outline: readonly Point2[], x: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < outline.length; i++) {
    const [ax, ay] = outline[i]!;
    const [bx, by] = outline[(i + 1) % outline.length]!;
    if (Math.min(ax, bx) > x || Math.max(ax, bx) < x) continue;
    const y = ax === bx ? ay : ay + ((x - ax) / (bx - ax)) * (by - ay);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return (low + high) / 2;
}

/**
 * Blocks in an order in which each may be drawn over those before it: whatever stands before another comes after it
 * (Kahn's sort over the pairs that meet on the drawing). Blocks that stand in each other come as they are.
 */
export function farthestFirst(blocks: readonly SeenBlock[]): readonly SeenBlock[] {
  const sorted = [...blocks].sort((a, b) => b.maxY - a.maxY);
  const index = boxIndex(sorted, (one) => one);
  const after: number[][] = sorted.map(() => []);
  const waits = new Int32Array(sorted.length);
  sorted.forEach((a, i) => {
    for (const j of positionsIn(index, a)) {
      if (j <= i) continue;
      const before = standsBefore(a, sorted[j]!);
      if (before === null) continue;
      const [back, front] = before ? [j, i] : [i, j];
      after[back]!.push(front);
      waits[front]!++;
    }
  });
  const order: SeenBlock[] = [];
  const taken = new Uint8Array(sorted.length);
  const open: number[] = [];
  const take = (i: number): void => {
    taken[i] = 1;
    order.push(sorted[i]!);
    for (const next of after[i]!) if (--waits[next]! === 0 && !taken[next]) open.push(next);
  };
  sorted.forEach((_, i) => {
    if (waits[i] === 0 && !taken[i]) take(i);
    while (open.length > 0) {
      const next = open.pop()!;
      if (!taken[next]) take(next);
    }
  });
  // What waits in a ring: in the order of their backs.
  sorted.forEach((_, i) => {
    if (!taken[i]) order.push(sorted[i]!);
  });
  return order;
}
