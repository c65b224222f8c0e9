import { between, distance } from '../../routing/plane/space.ts';
import type { Place } from '../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { Way } from '../branches/way.ts';

/** What lies higher, feet, is worked from a ladder, and from a lift. Common practice, no source. */
export const LADDER_FROM = 7;
export const LIFT_FROM = 12;

/** Whether work at an elevation is done off the ground. */
export const isHigh = (z: number): boolean => z > LADDER_FROM;

/** Feet of a straight that are worked off the ground. */
function highOf(a: Point3, b: Point3, over = LADDER_FROM): number {
  const length = distance(a, b);
  const [isUp, isNextUp] = [a[2] > over, b[2] > over];
  if (isUp === isNextUp) return isUp ? length : 0;
  return (length * (Math.max(a[2], b[2]) - over)) / Math.abs(b[2] - a[2]);
}

/** Feet of a path that lie over a height, off the ground where none is given; what is buried never does. */
export const highAlong = (path: readonly Point3[], place: Place, over = LADDER_FROM): number =>
  place === 'underground' ? 0 : path.slice(1).reduce((feet, to, i) => feet + highOf(path[i]!, to, over), 0);

/** The same between two distances of a way. */
export function highFeet(way: Way, from: number, to: number): number {
  let feet = 0;
  way.places.forEach((place, leg) => {
    const [start, end] = [way.at[leg]!, way.at[leg + 1]!];
    const [low, high] = [Math.max(from, start), Math.min(to, end)];
    if (place === 'underground' || high <= low) return;
    const at = (distanceAlong: number): Point3 =>
      between(way.points[leg]!, way.points[leg + 1]!, (distanceAlong - start) / (end - start));
    feet += highOf(at(low), at(high));
  });
  return feet;
}
