import { between, distance } from '../../routing/plane/space.ts';
import type { Place } from '../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { Way } from '../branches/way.ts';

/** What lies higher, feet, is worked from a ladder or a lift. Common practice, no source. */
const FROM_THE_GROUND = 7;

/** Whether work at an elevation is done off the ground. */
export const isHigh = (z: number): boolean => z > FROM_THE_GROUND;

/** Feet of a straight that are worked off the ground. */
function highOf(a: Point3, b: Point3): number {
  const length = distance(a, b);
  if (isHigh(a[2]) === isHigh(b[2])) return isHigh(a[2]) ? length : 0;
  return (length * (Math.max(a[2], b[2]) - FROM_THE_GROUND)) / Math.abs(b[2] - a[2]);
}

/** Feet of a path that are worked off the ground; what is buried never is. */
export const highAlong = (path: readonly Point3[], place: Place): number =>
  place === 'underground' ? 0 : path.slice(1).reduce((feet, to, i) => feet + highOf(path[i]!, to), 0);

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
