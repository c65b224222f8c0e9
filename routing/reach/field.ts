import { type Box, boxHolds, widened } from '../plane/box.ts';
import { type BoxIndex, boxIndex, positionsIn } from '../plane/box-index.ts';
import { insideOf, type Obstacle, obstacleOf, outlineDistance } from '../plane/obstacle.ts';
import { rectangleAt } from '../plane/rectangle.ts';
import type { Column, Point2, Site, Stall, Vehicle } from '../site/site.ts';
import { parkedRectangle, vehicleOf } from '../standing/parked.ts';
import { nearAmong } from './cords.ts';

type Standing = Pick<Site, 'stalls' | 'columns' | 'vehicles' | 'rules'>;

/** Everything that a cord on a site goes around: the vehicle of every stall, each taken as occupied, then every column. */
export interface Field {
  readonly stalls: readonly Stall[];
  readonly columns: readonly Column[];
  /** Vehicle of each stall. */
  readonly vehicles: readonly Vehicle[];
  readonly headClearance: number;
  readonly index: BoxIndex<Obstacle>;
}

// An unchanged stall with an unchanged vehicle keeps its obstacle, so that fields can be compared by identity.
const parked = new WeakMap<Stall, { vehicle: Vehicle; headClearance: number; obstacle: Obstacle }>();
const standing = new WeakMap<Column, Obstacle>();

/** The vehicle standing in a stall, as an obstacle. */
function parkedObstacle(stall: Stall, vehicle: Vehicle, headClearance: number): Obstacle {
  const known = parked.get(stall);
  if (known && known.vehicle === vehicle && known.headClearance === headClearance) return known.obstacle;
  const obstacle = obstacleOf(parkedRectangle(stall, vehicle, headClearance));
  parked.set(stall, { vehicle, headClearance, obstacle });
  return obstacle;
}

function columnObstacle(column: Column): Obstacle {
  const known = standing.get(column);
  if (known) return known;
  const obstacle = obstacleOf(rectangleAt(column.at, column.size, column.rotation ?? 0));
  standing.set(column, obstacle);
  return obstacle;
}

// The last field: most sites asked about differ from the one before in nothing, or in one element.
let latest: { readonly site: Standing; readonly field: Field } | null = null;

/** The field of a site. The same object as the last time where nothing that stands on the site has changed. */
export function fieldOf(site: Standing): Field {
  const { stalls, columns, rules } = site;
  const { headClearance } = rules;
  const alike =
    latest !== null &&
    latest.site.vehicles === site.vehicles &&
    latest.site.rules.vehicle === rules.vehicle &&
    latest.field.headClearance === headClearance;
  const last = alike && latest ? latest.field : null;
  if (last?.stalls === stalls && last.columns === columns) return last;
  const vehicles = new Array<Vehicle>(stalls.length);
  const items = new Array<Obstacle>(stalls.length + columns.length);
  for (let i = 0; i < stalls.length; i++) {
    const kept = last && last.stalls[i] === stalls[i] ? last : null;
    const vehicle = kept ? kept.vehicles[i]! : vehicleOf(stalls[i]!, site);
    vehicles[i] = vehicle;
    items[i] = kept ? kept.index.items[i]! : parkedObstacle(stalls[i]!, vehicle, headClearance);
  }
  for (let i = 0; i < columns.length; i++) items[stalls.length + i] = columnObstacle(columns[i]!);
  const index = boxIndex(items, itself, latest?.field.index);
  const field: Field = { stalls, columns, vehicles, headClearance, index };
  latest = { site, field };
  return field;
}

const itself = (obstacle: Obstacle): Box => obstacle;

/** Most boxes that `changesBetween` lists one by one. */
const MOST_CHANGES = 200;

/** The boxes in which two fields differ, old and new; null where that is so many that all may be taken as changed. */
export function changesBetween(before: Field, after: Field): readonly Box[] | null {
  const a = before.index.items;
  const b = after.index.items;
  const changes: Box[] = [];
  if (a.length === b.length) {
    for (let i = 0; i < a.length; i++) {
      if (a[i] === b[i]) continue;
      changes.push(a[i]!, b[i]!);
      if (changes.length > MOST_CHANGES) return null;
    }
    return changes;
  }
  const were = new Set(a);
  const are = new Set(b);
  for (const o of a) if (!are.has(o)) changes.push(o);
  for (const o of b) if (!were.has(o)) changes.push(o);
  return changes.length > MOST_CHANGES ? null : changes;
}

/** The obstacles that share a point with a box, for a cord from a point: without those that hold the point inside. */
export function obstaclesFor(field: Field, from: Point2): (box: Box) => readonly Obstacle[] {
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
export function vehicleUnder(field: Field, at: Point2): { readonly stall: Stall; readonly vehicle: Vehicle } | null {
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
export function besideVehicle(field: Field, [x, y]: Point2): boolean {
  const near = positionsIn(field.index, widened({ minX: x, minY: y, maxX: x, maxY: y }, BESIDE));
  return near.some((i) => i < field.stalls.length && outlineDistance(field.index.items[i]!, x, y) <= BESIDE);
}

/**
 * The same answers as from `field`'s index within a window that many cords are looked for in: what stands in the window
 * is fetched once. `seen` in their results still says what had a say.
 */
export function windowOn(field: Field, window: Box): (from: Point2) => (box: Box) => readonly Obstacle[] {
  const inWindow = positionsIn(field.index, window).map((i) => field.index.items[i]!);
  return (from) => {
    const outside = obstaclesFor(field, from);
    const inside = nearAmong(inWindow.filter((o) => !insideOf(o, from[0], from[1])));
    return (box) => (boxHolds(window, box) ? inside(box) : outside(box));
  };
}
