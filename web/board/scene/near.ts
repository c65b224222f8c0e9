import type { Point2 } from '../../../routing/site/site.ts';

/** The point of a segment that is nearest to a point. */
export function nearestOnSegment([x, y]: Point2, [ax, ay]: Point2, [bx, by]: Point2): Point2 {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  return [ax + t * dx, ay + t * dy];
}

export function toSegment(at: Point2, a: Point2, b: Point2): number {
  const [x, y] = nearestOnSegment(at, a, b);
  return Math.hypot(x - at[0], y - at[1]);
}

/** Whether a point lies inside an outline (even and odd crossings); on its edge, either. */
export function pointInOutline([x, y]: Point2, outline: readonly Point2[]): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i]!;
    const [bx, by] = outline[j]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
