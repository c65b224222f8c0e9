import { between, distance } from '../../routing/plane/space.ts';
import type { Place } from '../../routing/site/schema/vocabulary.ts';
import type { Point3, Rules } from '../../routing/site/site.ts';
import type { ConduitWay } from '../branches/way.ts';

/** What lies higher, feet, is worked from a ladder, and from a lift: a rule of the site. */
export type WorkHeight = Rules['workHeight'];

/** Of a quantity, how much is worked off the ground, and how much of that from a lift. */
export interface Aloft {
  readonly high: number;
  readonly lift: number;
}

export const ON_GROUND: Aloft = { high: 0, lift: 0 };
const ON_LADDER: Aloft = { high: 1, lift: 0 };
const ON_LIFT: Aloft = { high: 1, lift: 1 };

/** How one thing at an elevation is worked. */
export const aloftAt = (z: number, { ladder, lift }: WorkHeight): Aloft =>
  z > lift ? ON_LIFT : z > ladder ? ON_LADDER : ON_GROUND;

export const times = ({ high, lift }: Aloft, count: number): Aloft =>
  high === 0 ? ON_GROUND : { high: high * count, lift: lift * count };

export const plusAloft = (a: Aloft, b: Aloft): Aloft =>
  b.high === 0 ? a : a.high === 0 ? b : { high: a.high + b.high, lift: a.lift + b.lift };

/** A quantity of what lies along so many feet, by how much of these is aloft. */
export const shareAloft = (aloft: Aloft, feet: number, quantity: number): Aloft =>
  feet > 0 ? times(aloft, quantity / feet) : ON_GROUND;

/** Feet of a straight over a height. */
function feetOver(a: Point3, b: Point3, over: number): number {
  const length = distance(a, b);
  const [isUp, isNextUp] = [a[2] > over, b[2] > over];
  if (isUp === isNextUp) return isUp ? length : 0;
  return (length * (Math.max(a[2], b[2]) - over)) / Math.abs(b[2] - a[2]);
}

function straightAloft(a: Point3, b: Point3, { ladder, lift }: WorkHeight): Aloft {
  const high = feetOver(a, b, Math.min(ladder, lift));
  return high === 0 ? ON_GROUND : { high, lift: feetOver(a, b, lift) };
}

/** Feet of a path that are worked off the ground; what is buried never is. */
export const aloftAlong = (path: readonly Point3[], place: Place, heights: WorkHeight): Aloft =>
  place === 'underground'
    ? ON_GROUND
    : path.slice(1).reduce((feet, to, i) => plusAloft(feet, straightAloft(path[i]!, to, heights)), ON_GROUND);

/** The same between two distances of a way. */
export function aloftOn(way: ConduitWay, from: number, to: number, heights: WorkHeight): Aloft {
  let feet = ON_GROUND;
  way.places.forEach((place, leg) => {
    const [start, end] = [way.at[leg]!, way.at[leg + 1]!];
    const [low, high] = [Math.max(from, start), Math.min(to, end)];
    if (place === 'underground' || high <= low) return;
    const at = (distanceAlong: number): Point3 =>
      between(way.points[leg]!, way.points[leg + 1]!, (distanceAlong - start) / (end - start));
    feet = plusAloft(feet, straightAloft(at(low), at(high), heights));
  });
  return feet;
}
