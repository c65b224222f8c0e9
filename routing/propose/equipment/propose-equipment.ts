import type { Point2, Point3, Site } from '../../site/site.ts';
import { lotFrame } from '../raceways/lattice/lot-frame.ts';
import { canopiesOf } from './canopies.ts';
import { cutInto } from './cut-rows.ts';
import { gapsOf, ordersOf } from './groups.ts';
import { type End, placeFinder } from './place-finder.ts';
import { type EquipmentAsked, type PlacedEquipment, placeGroups, wishFor } from './place-groups.ts';

export interface EquipmentProposal {
  readonly placed: readonly PlacedEquipment[];
  /** All of it in feet of branch: pieces, feeders and trenches by their weight, and branches. */
  readonly total: number;
  /** Places that were looked at, and stretches of the rows. */
  readonly looked: number;
  readonly stretches: number;
  /** Ends for which no place was found. */
  readonly without: readonly number[];
}

/** Stretches are weighed with places on a grid of so many feet; pieces are placed on one of a foot. */
const COARSE = 3;
/** An order is cut between so many cells at most in one stretch: more would be no better for the time that they take. */
const CELLS_A_PIECE = 14;

/**
 * How many new pieces of equipment some ends want, for which of them each is, and where it stands: one decision. The ends
 * under one canopy, or all that hang from no steel, and all together, are put in an order along the rows, band by band or along all of them,
 * and cut into stretches, one a piece, so that pieces, feeders, trenches and branches weigh least together: of all ways to
 * cut either order. From one canopy to the next nothing holds a raceway: a piece is for two where the trench between them
 * costs less than another piece.
 * @param asked what else a piece has to be good for is let go where no place is
 * @param mayCross a piece may be for several canopies, through the ground
 */
export function proposeEquipment(asked: EquipmentAsked, mayCross = false): EquipmentProposal {
  const { site, ends, make, weigh, source } = asked;
  const { into } = lotFrame(site);
  const flat = ends.map(({ at: [x, y] }) => into([x, y]));
  if (ends.length === 0) return { placed: [], total: 0, looked: 0, stretches: 0, without: [] };
  const gaps = gapsOf(flat);
  const canopies = canopiesOf(
    site,
    ends.map(({ at }) => at),
  );
  const finder = placeFinder(site, make);
  let stretches = 0;
  const wish = wishFor(asked, canopies, gaps);
  const circuitsOf = (own: readonly number[]): number => own.reduce((sum, i) => sum + ends[i]!.circuits, 0);
  const weighed = (own: readonly number[]): number => {
    const weight = weigh(circuitsOf(own));
    if (weight === null) return Number.POSITIVE_INFINITY;
    stretches++;
    const place = finder.find(
      own.map((i) => ends[i]!),
      wish(own, weight, [], COARSE),
    );
    return place === null ? Number.POSITIVE_INFINITY : place.weighed + weight.itself;
  };
  const cutOf = (own: readonly number[]): Cut =>
    cheapest(
      ordersOf(own.map((i) => flat[i]!)).map((order) =>
        cut(
          order.map((k) => own[k]!),
          ends,
          weigh,
          weighed,
        ),
      ),
    );
  const apart = [...new Set(canopies.of)].map((canopy) =>
    cutOf(ends.flatMap((_, i) => (canopies.of[i] === canopy ? [i] : []))),
  );
  const one: Cut = { groups: apart.flatMap(({ groups: own }) => own), cost: sumOf(apart) };
  // Through the ground a piece may be for several canopies, where it is known what a trench costs.
  const isPriced = (weigh(1)?.trench ?? 0) > 0;
  const isAcross = mayCross && apart.length > 1 && ends.length <= MOST_ACROSS && canopies.haveRisers && isPriced;
  const { groups } = isAcross ? cheapest([one, cutOf(ends.map((_, i) => i))]) : one;

  // Those nearest to the source first: their trenches are there for the others.
  const far = (own: readonly number[]): number =>
    source === null ? 0 : Math.min(...own.map((i) => straight(flat[i]!, into(source))));
  const order = [...groups].sort((a, b) => far(a) - far(b));
  const { looked, ...found } = placeGroups(
    asked,
    order,
    (fine, theirs, own, good) => fine.find(theirs, { ...own, ...(good && { isGood: good }) }) ?? fine.find(theirs, own),
  );
  return { ...found, looked: looked + finder.looked(), stretches };
}

type Cut = { readonly groups: readonly (readonly number[])[]; readonly cost: number };

const cheapest = (cuts: readonly Cut[]): Cut =>
  cuts.reduce((least, one) => (one.cost < least.cost - 1e-9 ? one : least));

const sumOf = (cuts: readonly Cut[]): number => cuts.reduce((sum, { cost }) => sum + cost, 0);

/** Of more ends than these each canopy has pieces of its own: to look at all of them together would take long. */
const MOST_ACROSS = 120;

/** An order cut into the stretches that weigh least together; where it is long, between cells of several ends. */
function cut(
  order: readonly number[],
  ends: readonly End[],
  weigh: EquipmentAsked['weigh'],
  weighed: (own: readonly number[]) => number,
): Cut {
  let most = 0;
  for (let circuits = 0; most < order.length && weigh(circuits + 1) !== null; most++)
    circuits += ends[order[most]!]!.circuits;
  const size = Math.max(1, Math.ceil(Math.max(1, most) / CELLS_A_PIECE));
  const cells = Array.from({ length: Math.ceil(order.length / size) }, (_, k) => order.slice(k * size, (k + 1) * size));
  const { stretches, cost } = cutInto(cells.length, Math.min(cells.length, 2 * CELLS_A_PIECE), (from, to) =>
    weighed(cells.slice(from, to).flat()),
  );
  const groups = stretches.flatMap(([from, to]) => {
    const own = cells.slice(from, to).flat();
    // Of a cell that has no place together each has its own, or none.
    return to - from === 1 && own.length > 1 && !Number.isFinite(weighed(own)) ? own.map((i) => [i]) : [own];
  });
  return { groups, cost };
}

const straight = ([a, b]: Point2, [u, v]: Point2): number => Math.abs(a - u) + Math.abs(b - v);

/** The branches from an entry to some boxes in all, along the lot and square to it: what places are weighed by. Feet. */
export function branchesFrom(site: Site, entry: Point3, boxes: readonly Point3[]): number {
  const { into } = lotFrame(site);
  const [u, v] = into([entry[0], entry[1]]);
  return boxes.reduce((sum, [x, y, z]) => {
    const [bu, bv] = into([x, y]);
    return sum + Math.abs(bu - u) + Math.abs(bv - v) + Math.abs(z - entry[2]);
  }, 0);
}
