import { obstacleOf } from '../../../routing/plane/obstacle.ts';
import { type Cord, cordsTo, cordTo, nearAmong } from '../../../routing/reach/cords/cords.ts';
import type { Point2 } from '../../../routing/site/site.ts';

/**
 * The shortest path in the plan from one point to another that stays out of the open interiors of some simple polygons.
 * Their boundaries may be touched and followed, also where two of them meet; they may overlap, and then a boundary
 * inside another polygon is closed. A point up to a billionth of a foot inside a polygon counts as on its boundary.
 * Null where there is no path: one of the ends is enclosed, or inside a polygon.
 */
export function tautPath(from: Point2, to: Point2, polygons: readonly (readonly Point2[])[]): Cord | null {
  return cordTo(cordsTo(from, [to], nearAmong(polygons.map(obstacleOf))), 0);
}
