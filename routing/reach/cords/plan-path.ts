import { hypot2 } from '../../plane/hypot.ts';
import { type Obstacle, spansInside } from '../../plane/obstacle.ts';
import type { Point2 } from '../../site/site.ts';

/** Length of a polyline in the plan, feet. */
export function lengthAlong(path: readonly Point2[]): number {
  let length = 0;
  for (let i = 1; i < path.length; i++) length += hypot2(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  return length;
}

/** The point some distance along a polyline of one point or more; its ends where the distance is past them. */
export function pointAlong(path: readonly Point2[], distance: number): Point2 {
  let left = distance;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    const leg = hypot2(b[0] - a[0], b[1] - a[1]);
    if (left < leg) {
      const t = Math.max(0, left) / leg;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    }
    left -= leg;
  }
  return path.at(-1)!;
}

/** The part of a polyline between two distances along it, with the corners between. */
export function partAlong(path: readonly Point2[], from: number, to: number): Point2[] {
  if (path.length === 2) return [pointAlong(path, from), pointAlong(path, to)];
  const part = [pointAlong(path, from)];
  let gone = 0;
  for (let i = 1; i < path.length; i++) {
    const b = path[i]!;
    gone += hypot2(b[0] - path[i - 1]![0], b[1] - path[i - 1]![1]);
    if (gone > from && gone < to) part.push(b);
  }
  part.push(pointAlong(path, to));
  return part;
}

/** The parts of a polyline inside a polygon, as distances along it, in order. */
export function partsInside(path: readonly Point2[], polygon: Obstacle): [from: number, to: number][] {
  const parts: [number, number][] = [];
  let gone = 0;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    const leg = hypot2(b[0] - a[0], b[1] - a[1]);
    const away =
      Math.max(a[0], b[0]) < polygon.minX ||
      Math.min(a[0], b[0]) > polygon.maxX ||
      Math.max(a[1], b[1]) < polygon.minY ||
      Math.min(a[1], b[1]) > polygon.maxY;
    if (!away)
      for (const [from, to] of spansInside(polygon, a[0], a[1], b[0], b[1]))
        parts.push([gone + from * leg, gone + to * leg]);
    gone += leg;
  }
  return parts;
}
