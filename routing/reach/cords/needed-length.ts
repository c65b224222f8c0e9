import { hypot2 } from '../../plane/hypot.ts';
import { insideOf, obstacleOf } from '../../plane/obstacle.ts';
import type { Point2, Point3 } from '../../site/site.ts';
import { cordsTo, cordTo, nearAmong } from './cords.ts';

/** A taut cord's lengths, feet; null where no way leads to the inlet. */
export interface NeededLength {
  /** sqrt(planLength^2 + dz^2). */
  readonly needed: number | null;
  readonly planLength: number | null;
  /** The way in the plan; empty where there is none. */
  readonly path: readonly Point2[];
}

/**
 * The length of cord from a retractor to an inlet, round some outlines: simple polygons of any shape, in either sense,
 * that may overlap. The plan path is the shortest one that stays out of their interiors; their outlines may be touched.
 * An outline that holds the retractor inside is no obstacle to the cord, as a vehicle under its retractor is not.
 */
export function neededLength(question: {
  readonly retractor: Point3;
  readonly inlet: Point3;
  readonly around: readonly (readonly Point2[])[];
}): NeededLength {
  const [x, y, z] = question.retractor;
  const obstacles = question.around.map(obstacleOf).filter((o) => !insideOf(o, x, y));
  const cord = cordTo(cordsTo([x, y], [question.inlet], nearAmong(obstacles)), 0);
  if (!cord) return { needed: null, planLength: null, path: [] };
  return { needed: hypot2(cord.length, z - question.inlet[2]), planLength: cord.length, path: cord.path };
}
