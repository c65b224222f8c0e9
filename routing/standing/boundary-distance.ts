import type { Boundary, Equipment, Point2 } from '../site/site.ts';
import { footprintOf } from './footprint.ts';

/** From a piece of equipment to a boundary: the nearest place of each, and how far apart they are, feet. */
export interface BoundaryDistance {
  readonly boundary: Boundary;
  readonly from: Point2;
  readonly to: Point2;
  readonly feet: number;
}

/** Whether it is set out here: what stands already, and the source, are where they are. */
export const isSetOut = ({ existing, kind }: Equipment): boolean => existing !== true && kind !== 'source';

/** The nearest place on a straight. */
function nearestOn([px, py]: Point2, [ax, ay]: Point2, [bx, by]: Point2): Point2 {
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / long));
  return [ax + t * dx, ay + t * dy];
}

/** Two straights cross: the ends of each lie on either side of the other. */
function cross(a: Point2, b: Point2, c: Point2, d: Point2): boolean {
  const side = ([px, py]: Point2, [qx, qy]: Point2, [rx, ry]: Point2): number =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/**
 * How far equipment stands from a boundary in plan: between straights that do not cross the nearest places have an end
 * of one of them among them. 0 where the boundary goes through it.
 */
export function boundaryDistance(one: Equipment, boundary: Boundary): BoundaryDistance {
  const corners = footprintOf(one);
  let best: BoundaryDistance | null = null;
  const take = (from: Point2, to: Point2): void => {
    const feet = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (best === null || feet < best.feet) best = { boundary, from, to, feet };
  };
  const { path } = boundary;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    corners.forEach((corner, k) => {
      const next = corners[(k + 1) % corners.length]!;
      if (cross(a, b, corner, next)) take(corner, corner);
      take(corner, nearestOn(corner, a, b));
      for (const end of [a, b]) take(nearestOn(end, corner, next), end);
    });
  }
  return best!;
}
