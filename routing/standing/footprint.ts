import { direction } from '../plane/direction.ts';
import { type Rectangle, rectangleAt } from '../plane/rectangle.ts';
import type { Equipment, Keepout, Point2 } from '../site/site.ts';

/** Overlaps of no more than this, square feet, are things that touch. */
export const TOUCHING_AREA = 1e-6;

/** The plan of a piece of equipment. */
export const footprintOf = ({ at, size, rotation = 0 }: Equipment): Rectangle =>
  rectangleAt(at, [size[0], size[1]], rotation);

/** Points in the equipment's own frame: its middle at [0, 0], its front towards -y. */
export function seenFrom({ at, rotation = 0 }: Equipment, points: readonly Point2[]): Point2[] {
  const [ux, uy] = direction(rotation);
  return points.map(([px, py]) => {
    const x = px - at[0];
    const y = py - at[1];
    return [x * ux + y * uy, y * ux - x * uy];
  });
}

/** A keep-out has a part between grade and a height, feet. */
export const standsUnder = ({ from, to }: Keepout, height: number): boolean =>
  (from ?? Number.NEGATIVE_INFINITY) < height && (to ?? Number.POSITIVE_INFINITY) > 0;
