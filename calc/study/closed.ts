import { enters, insideOf, type Obstacle, obstacleOf } from '../../routing/plane/obstacle.ts';
import { inStall } from '../../routing/site/place/stall-rectangle.ts';
import type { Point2, Raceway, Site, Stall } from '../../routing/site/site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { ratesOf } from '../prices/rates.ts';
import type { CostSheet } from '../takeoff/bid/cost.ts';

/** Room that work takes on either side of what is dug, set or hung, feet. Common practice, no source. */
const BESIDE = 2;
/** Stalls that a lift and what lies under it close at a time. Common practice, no source. */
const UNDER_A_LIFT = 4;
/** Hours of work a day. Common practice, no source. */
const HOURS_A_DAY = 8;

/** What the work takes from those who park there. */
export interface Closed {
  /** Stalls that are dug up or have a pedestal set in or beside them: closed until the ground is whole again. */
  readonly dug: number;
  /** Other stalls under which something is hung. */
  readonly under: number;
  /** Working days of the crew. */
  readonly days: number;
  /** Stalls closed times the days that each is closed. */
  readonly stallDays: number;
}

/** Hours of labor that the crew of a list works in a day; where it has none, the hands of a lift's day. */
export const hoursADay = ({ crew, rates }: PriceList): number => {
  const hands = (crew ?? []).reduce((sum, { count }) => sum + count, 0);
  return hands > 0 ? hands * HOURS_A_DAY : ratesOf(rates).liftHours;
};

/**
 * Stalls that the work closes and for how long. What is dug stays closed while all work in the ground is done; a lift
 * closes a few stalls at a time, as long as there is work overhead. Days are hours of labor over those of a crew.
 * @param fresh raceways that are laid, by id; those that stand close nothing
 */
export function closedBy(site: Site, fresh: ReadonlySet<string>, cost: CostSheet): Closed {
  const laid = site.raceways.filter(({ id }) => fresh.has(id));
  const isUnderground = ({ place }: Raceway): boolean => place === 'underground';
  const ground = legsOf(laid.filter(isUnderground));
  const above = legsOf(laid.filter((one) => !isUnderground(one)));
  const placesOf = (isPedestal: boolean): readonly Point2[] =>
    site.drops.flatMap(({ box, mount }) => ((mount === 'pedestal') === isPedestal ? [[box[0], box[1]] as const] : []));
  const dug = new Set(touched(site.stalls, ground, placesOf(true)));
  const under = touched(site.stalls, above, placesOf(false)).filter((id) => !dug.has(id));
  const day = hoursADay(cost.list);
  const groundDays = cost.rows.reduce((sum, { system, hours }) => sum + (system === 'ground' ? hours : 0), 0) / day;
  const highHours = cost.rows.reduce(
    (sum, { hours, quantity, ladder, lift }) => sum + (quantity > 0 ? (hours * (ladder + lift)) / quantity : 0),
    0,
  );
  return {
    dug: dug.size,
    under: under.length,
    days: cost.hours / day,
    stallDays: dug.size * groundDays + Math.min(UNDER_A_LIFT, under.length) * (highHours / day),
  };
}

interface Leg {
  readonly from: Point2;
  readonly to: Point2;
}

const legsOf = (raceways: readonly Raceway[]): readonly Leg[] =>
  raceways.flatMap(({ path }) =>
    path.slice(1).map(([x, y], i): Leg => ({ from: [path[i]![0], path[i]![1]], to: [x, y] })),
  );

/** Ids of the stalls that a leg or a place comes into, with room to work. */
function touched(stalls: readonly Stall[], legs: readonly Leg[], places: readonly Point2[]): readonly string[] {
  return stalls.flatMap((stall) => {
    const room = roomOf(stall);
    const isTouched =
      legs.some(({ from, to }) => enters(room, from[0], from[1], to[0], to[1])) ||
      places.some(([x, y]) => insideOf(room, x, y));
    return isTouched ? [stall.id] : [];
  });
}

function roomOf(stall: Stall): Obstacle {
  const half = stall.width / 2 + BESIDE;
  return obstacleOf([
    inStall(stall, -BESIDE, -half),
    inStall(stall, stall.depth + BESIDE, -half),
    inStall(stall, stall.depth + BESIDE, half),
    inStall(stall, -BESIDE, half),
  ]);
}
