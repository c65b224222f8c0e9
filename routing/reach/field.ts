import { fewChanged } from '../kept/changed-places.ts';
import { kept } from '../kept/kept.ts';
import { keptEach } from '../kept/kept-list.ts';
import { concatenating } from '../kept/parts.ts';
import { type Box, boxHolds, widened } from '../plane/box.ts';
import { type BoxIndex, indexing, positionsIn } from '../plane/box-index.ts';
import { insideOf, type Obstacle, obstacleOf, outlineDistance } from '../plane/obstacle.ts';
import { rectangleAt } from '../plane/rectangle.ts';
import type { Column, Point2, Site, Stall, Vehicle } from '../site/site.ts';
import { parkedRectangle, vehicleOf } from '../standing/parked.ts';
import { nearAmong } from './cords/cords.ts';

type Standing = Pick<Site, 'stalls' | 'columns' | 'vehicles' | 'rules'>;

/** Everything that a cord on a site goes around: the vehicle of every stall, each taken as occupied, then every column. */
export interface CordField {
  readonly stalls: readonly Stall[];
  readonly columns: readonly Column[];
  /** Vehicle of each stall. */
  readonly vehicles: readonly Vehicle[];
  readonly headClearance: number;
  readonly index: BoxIndex<Obstacle>;
}

/** The vehicle standing in each stall, as an obstacle. */
const parkedIn = keptEach(
  ([stall, vehicle]: readonly [Stall, Vehicle], [headClearance]: readonly [number]): Obstacle =>
    obstacleOf(parkedRectangle(stall, vehicle, headClearance)),
);

const standingAt = keptEach(
  ([{ at, size, rotation = 0 }]: readonly [Column]): Obstacle => obstacleOf(rectangleAt(at, size, rotation)),
);

const vehiclesIn = keptEach(
  ([stall]: readonly [Stall], [vehicles, vehicle]: readonly [Site['vehicles'], string]): Vehicle =>
    vehicleOf(stall, { vehicles, rules: { vehicle } }),
);

const allObstacles = concatenating<Obstacle>();
const indexOf = indexing<Obstacle>((obstacle) => obstacle);

/** The field of a site. The same object while nothing that stands on the site changes. */
export function fieldOf({ stalls, columns, vehicles, rules }: Standing): CordField {
  const parked = vehiclesIn([stalls], [vehicles, rules.vehicle]);
  const index = indexOf(allObstacles([parkedIn([stalls, parked], [rules.headClearance]), standingAt([columns], [])]));
  return fieldBy(index, stalls, columns, parked, rules.headClearance);
}

const fieldBy = kept(
  (
    index: BoxIndex<Obstacle>,
    stalls: readonly Stall[],
    columns: readonly Column[],
    vehicles: readonly Vehicle[],
    headClearance: number,
  ): CordField => ({ stalls, columns, vehicles, headClearance, index }),
);

/** Most boxes that `changesBetween` lists one by one. */
const MOST_CHANGES = 200;

/** The boxes in which two fields differ, old and new; null where that is so many that all may be taken as changed. */
export const changesBetween = kept((before: CordField, after: CordField): readonly Box[] | null => {
  const a = before.index.items;
  const b = after.index.items;
  if (a.length === b.length) {
    const places = fewChanged(b, a, MOST_CHANGES / 2);
    return places === null ? null : places.flatMap((i) => [a[i]!, b[i]!]);
  }
  if (Math.abs(a.length - b.length) > MOST_CHANGES) return null;
  const were = new Set(a);
  const are = new Set(b);
  const changes = [...a.filter((one) => !are.has(one)), ...b.filter((one) => !were.has(one))];
  return changes.length > MOST_CHANGES ? null : changes;
});

/** The obstacles that share a point with a box, for a cord from a point: without those that hold the point inside. */
export function obstaclesFor(field: CordField, from: Point2): (box: Box) => readonly Obstacle[] {
  return (box) => {
    const found: Obstacle[] = [];
    for (const i of positionsIn(field.index, box)) {
      const obstacle = field.index.items[i]!;
      if (!insideOf(obstacle, from[0], from[1])) found.push(obstacle);
    }
    return found;
  };
}

/** The first stall whose parked vehicle holds a point inside, with that vehicle; null where none does. */
export function vehicleUnder(
  field: CordField,
  at: Point2,
): { readonly stall: Stall; readonly vehicle: Vehicle } | null {
  const box = { minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] };
  for (const i of positionsIn(field.index, box)) {
    const stall = field.stalls[i];
    if (stall && insideOf(field.index.items[i]!, at[0], at[1])) return { stall, vehicle: field.vehicles[i]! };
  }
  return null;
}

// Above rounding, and below anything that is laid out.
const BESIDE = 1e-6;

/** A point lies on the outline of a parked vehicle. */
export function besideVehicle(field: CordField, [x, y]: Point2): boolean {
  const near = positionsIn(field.index, widened({ minX: x, minY: y, maxX: x, maxY: y }, BESIDE));
  return near.some((i) => i < field.stalls.length && outlineDistance(field.index.items[i]!, x, y) <= BESIDE);
}

/**
 * The same answers as from `field`'s index within a window that many cords are looked for in: what stands in the window
 * is fetched once. `seen` in their results still says what had a say.
 */
export function windowOn(field: CordField, window: Box): (from: Point2) => (box: Box) => readonly Obstacle[] {
  const inWindow = positionsIn(field.index, window).map((i) => field.index.items[i]!);
  return (from) => {
    const outside = obstaclesFor(field, from);
    const inside = nearAmong(inWindow.filter((o) => !insideOf(o, from[0], from[1])));
    return (box) => (boxHolds(window, box) ? inside(box) : outside(box));
  };
}
