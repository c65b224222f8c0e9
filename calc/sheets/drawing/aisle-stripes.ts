import { spansInside } from '../../../routing/plane/obstacle.ts';
import type { Aisle, Point2 } from '../../../routing/site/site.ts';
import { outlineOf } from '../../../routing/standing/outlines.ts';

/** Stripes of an access aisle are so far apart, square to them, feet. Common practice: 36 in, at 45 degrees. */
const APART = 3;
/** Stripes of the longest aisle that is striped: more than this and it is drawn plain. */
const MOST = 400;

/** The slanting stripes that are painted in an access aisle, within its outline. */
export function stripesOf(aisle: Aisle): [Point2, Point2][] {
  const outline = outlineOf(aisle);
  const { minX, minY, maxX, maxY } = outline;
  const height = maxY - minY;
  const step = APART * Math.SQRT2;
  if ((maxX - minX + height) / step > MOST) return [];
  const stripes: [Point2, Point2][] = [];
  for (let x = minX - height + step / 2; x < maxX; x += step) {
    const at = (t: number): Point2 => [x + t * height, minY + t * height];
    for (const [from, to] of spansInside(outline, x, minY, x + height, maxY)) stripes.push([at(from), at(to)]);
  }
  return stripes;
}

/** The middle of an aisle's box: where its name stands. */
export function aisleMiddle(aisle: Aisle): Point2 {
  const { minX, minY, maxX, maxY } = outlineOf(aisle);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}
