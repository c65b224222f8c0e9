import { hypot2 } from './hypot.ts';
import type { Point2 } from './point.ts';

/**
 * How far two convex outlines lie into each other, feet: the least that one has to be moved so that they only touch, by
 * the theorem of separating axes; 0 where they touch or lie apart. Outlines go round counter-clockwise or clockwise.
 */
export function overlapDepth(a: readonly Point2[], b: readonly Point2[]): number {
  let depth = Number.POSITIVE_INFINITY;
  for (const outline of [a, b]) {
    for (let i = 0; i < outline.length; i++) {
      const [px, py] = outline[i]!;
      const [qx, qy] = outline[(i + 1) % outline.length]!;
      const length = hypot2(qx - px, qy - py);
      if (length === 0) continue;
      const [nx, ny] = [(qy - py) / length, (px - qx) / length];
      const [lowA, highA] = spanAlong(a, nx, ny, px, py);
      const [lowB, highB] = spanAlong(b, nx, ny, px, py);
      const along = Math.min(highA - lowB, highB - lowA);
      if (along <= 0) return 0;
      depth = Math.min(depth, along);
    }
  }
  return depth;
}

/** From a point on, so that places far from the origin lose no digits. */
function spanAlong(
  outline: readonly Point2[],
  nx: number,
  ny: number,
  fromX: number,
  fromY: number,
): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const [x, y] of outline) {
    const at = (x - fromX) * nx + (y - fromY) * ny;
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return [low, high];
}
