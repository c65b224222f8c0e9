import { type Box, boxOf, widened } from '../../plane/box.ts';
import type { WorkingSpace } from '../../site/place/working-space.ts';
import type { Equipment, Member, Point2, Point3, Site } from '../../site/site.ts';
import { type LotFrame, lotFrame } from '../raceways/lattice/lot-frame.ts';
import { type FreeTurns, freeTurns } from './free-turns.ts';
import { BY_STEEL, type Canopy, nearSteel, type Weights, weightsOf } from './place-weights.ts';
import { placesOutward } from './places-outward.ts';
import { leastFirst, type Weighed } from './rough-weight.ts';

/** A place for a piece of equipment. Lengths in feet. */
export interface EquipmentPlace {
  readonly at: Point2;
  readonly rotation: number;
  /** Of all branches from there, along the lot and square to it. */
  readonly total: number;
  /** Likewise to what feeds it; 0 where nothing does. */
  readonly feeder: number;
  /** To the nearest place from which its trench may go on; 0 where nothing feeds it. */
  readonly trench: number;
  /** Of the longest. */
  readonly longest: number;
  /** Of branches in the ground to canopies that it does not stand by. */
  readonly dug: number;
  /** `total`, and the feeder and all trenches by what a foot of them counts as. */
  readonly weighed: number;
}

/** Where branches end, and how many circuits go there. */
export interface End {
  readonly at: Point3;
  readonly circuits: number;
}

/** What is asked of new equipment beside what it is. Lengths in feet. */
export interface Making {
  /** Of its entry, over its middle. */
  readonly entryHeight: number;
  /** Of a working space, whatever the equipment. */
  readonly least: WorkingSpace;
}

export type EquipmentMake = Omit<Equipment, 'at' | 'entry' | 'rotation' | 'id'> & Making;

/** What feeds the equipment, and how many feet of branch a foot of feeder counts as, and of the trench that it lies in. */
export interface FedBy {
  readonly at: Point2;
  readonly feeder: number;
  readonly trench: number;
  /** Where trenches of other feeders end already. */
  readonly trenches: readonly Point2[];
}

/** Rows with a gap across between them, and what a branch over it takes beside its level feet: up over the aisle and down. */
export interface Gaps {
  /** Across the lot, in its frame. */
  readonly along: 0 | 1;
  readonly at: readonly number[];
}

/** As far from the boxes as places are looked for, feet, where a branch may be as long. */
const FARTHEST = 400;

export interface Wish {
  /** No branch longer than this, feet. */
  readonly most: number;
  readonly fedBy: FedBy | null;
  /** The ends that hang under steel, by what they hang under: it stands by it, or its branches go there in the ground. */
  readonly by: readonly Canopy[];
  /** What a foot of trench to them counts as, in feet of branch. */
  readonly trench: number;
  readonly gaps: Gaps;
  /** Places are looked at on a grid of such steps, feet. */
  readonly step: number;
  /** What else a place has to be good for. */
  readonly isGood?: (place: Pick<EquipmentPlace, 'at' | 'rotation'>) => boolean;
}

export interface PlaceFinder {
  /** Places that were looked at so far. */
  readonly looked: () => number;
  readonly find: (ends: readonly End[], wish: Wish) => EquipmentPlace | null;
  /** A place of the grid, in whole feet of the frame, as it is for some ends; null where it is not free, near enough or good. */
  readonly stands: (ends: readonly End[], wish: Wish, at: Point2) => EquipmentPlace | null;
}

/**
 * Finds the free place from which the branches to some ends are shortest in all, with the feeder by its weight, and none
 * longer than it may be: places of a grid are looked at from the best outward, each in four turns, until one is free.
 * What was looked at once is kept from one question to the next.
 */
export function placeFinder(site: Site, make: EquipmentMake): PlaceFinder {
  const frame = lotFrame(site);
  const free = freeTurns(site, make, frame);
  const turnAt = free.at;
  const isBy = nearSteel(frame);
  const bySteel = new Map<readonly Member[], readonly Point2[]>();
  /** Free places by some steel, on a grid of three feet, or of one where that has none. */
  const alongSteel = (members: readonly Member[]): readonly Point2[] => {
    const known = bySteel.get(members);
    if (known !== undefined) return known;
    const within = widened(
      boxOf(members.flatMap(({ from, to }) => [from, to].map(([x, y]) => frame.into([x, y])))),
      BY_STEEL,
    );
    const on = (step: number): Point2[] =>
      gridIn(within, step).filter((at) => isBy(members, at) && turnAt(at[0], at[1]) !== null);
    const coarse = on(COARSE);
    const found = coarse.length > 0 ? coarse : on(1);
    bySteel.set(members, found);
    return found;
  };
  return {
    looked: free.looked,
    find: (ends, wish) => {
      const weights = weightsOf(frame, isBy, make.entryHeight, ends, wish);
      const first = (order: Iterable<Weighed>): EquipmentPlace | null => firstOf(frame, free, weights, order, wish);
      const { by } = wish;
      if (by.length === 0)
        return ends.length === 1 && isShutAbout(free, weights, wish) ? null : first(outward(weights, wish));
      const ordered = (places: readonly Point2[]) => leastFirst(places, weights.rough, weights.weigh);
      const places = by.length === 1 ? alongSteel(by[0]!.members) : by.flatMap(({ members }) => alongSteel(members));
      const steel = first(ordered(by.length === 1 ? places : [...new Set(places)]));
      // From the open its branches go in the ground, where it is known what that costs.
      const open =
        wish.trench > 0 && by.every(({ risers }) => risers.length > 0)
          ? first(under(outward(weights, wish), steel?.weighed ?? Number.POSITIVE_INFINITY))
          : null;
      const rough = open !== null && (steel === null || open.weighed < steel.weighed - 1e-9) ? open : steel;
      if (rough === null || wish.step >= COARSE) return rough;
      const near = widened(boxOf([frame.into(rough.at)]), COARSE + 1);
      const fine = gridIn(near, wish.step).filter(([u, v]) => !free.isShut(u, v));
      return first(ordered(fine)) ?? rough;
    },
    stands: (ends, wish, at) => {
      const weights = weightsOf(frame, isBy, make.entryHeight, ends, wish);
      return firstOf(frame, free, weights, [{ at, weighed: weights.weigh(at), isWhole: true }], wish);
    },
  };
}

/** Places by steel are looked for on a grid of so many feet, then on a finer one about the best of them. */
const COARSE = 3;

/** Places from the best outward, as far from the ends as a branch goes. */
const outward = ({ flat, rough }: Weights, { most, step }: Wish) =>
  placesOutward(flat, widened(boxOf(flat.map(({ at }) => at)), Math.min(most, FARTHEST)), step, rough);

/** Farther about than this, feet, to look at all places at once takes longer than to look from the nearest outward. */
const CLOSE = 16;

/** It is known already that no place as near to one end as it has to be is free. */
function isShutAbout({ isShut }: FreeTurns, { flat, lengths }: Weights, { most, step }: Wish): boolean {
  const [{ at }] = flat as readonly [Weights['flat'][number]];
  const near = most - lengths(at)[0]!;
  if (near > CLOSE) return false;
  const [u, v] = at;
  for (let i = Math.ceil((u - near) / step); i * step <= u + near; i++) {
    const rest = near - Math.abs(i * step - u);
    for (let j = Math.ceil((v - rest) / step); j * step <= v + rest; j++) if (!isShut(i * step, j * step)) return false;
  }
  return true;
}

/** The first ones of an order, as far as they weigh less than something. */
function* under(order: Iterable<Weighed>, most: number): Generator<Weighed> {
  for (const one of order) {
    if (one.weighed >= most) return;
    yield one;
  }
}

/** The first place of an order that is free, near enough and good. */
function firstOf(
  frame: LotFrame,
  { at: turnAt, isShut }: FreeTurns,
  { lengths, weigh, feeder, trench, dug, flat }: Weights,
  order: Iterable<Weighed>,
  { most, isGood }: Wish,
): EquipmentPlace | null {
  for (const { at, weighed, isWhole } of order) {
    if (isShut(at[0], at[1])) continue;
    const each = lengths(at);
    const longest = Math.max(...each);
    if (longest > most) continue;
    const rotation = turnAt(at[0], at[1]);
    if (rotation === null) continue;
    const place = { at: frame.outOf(at), rotation };
    if (isGood && !isGood(place)) continue;
    const total = each.reduce((sum, feet, i) => sum + feet * flat[i]!.circuits, 0);
    return {
      ...place,
      total,
      longest,
      feeder: feeder(at),
      trench: trench(at),
      dug: dug(at),
      weighed: isWhole ? weighed : weigh(at),
    };
  }
  return null;
}

function gridIn({ minX, minY, maxX, maxY }: Box, step: number): Point2[] {
  const places: Point2[] = [];
  for (let u = Math.ceil(minX / step) * step; u <= maxX; u += step)
    for (let v = Math.ceil(minY / step) * step; v <= maxY; v += step) places.push([u, v]);
  return places;
}
