import { boxOf, widened } from '../../plane/box.ts';
import type { Member, Point2 } from '../../site/site.ts';
import type { LotFrame } from '../raceways/lot-frame.ts';
import { away } from '../raceways/steel.ts';
import type { End, Wish } from './place-finder.ts';

/** Up over an aisle and down again, feet: raceways cross it so much higher than they hang. */
const OVER_AISLE = 6;
/** As deep as conduits lie in the ground, near enough, feet. */
const BURIED = 2;
/** Equipment that stands by steel, this near, feet, has what leaves it carried from there. Common practice, no source. */
export const BY_STEEL = 8;

/** Some ends under one piece of steel. */
export interface Canopy {
  readonly members: readonly Member[];
  /** Where conduits come up to it out of the ground; from none it is reached overhead alone. */
  readonly risers: readonly Point2[];
  /** Their places in the list of ends. */
  readonly ends: readonly number[];
}

export interface Weights {
  /** Of each branch, feet. */
  readonly lengths: (at: Point2) => readonly number[];
  readonly weigh: (at: Point2) => number;
  readonly feeder: (at: Point2) => number;
  readonly trench: (at: Point2) => number;
  /** Feet that branches lie in the ground to canopies that it does not stand by. */
  readonly dug: (at: Point2) => number;
  readonly flat: readonly { readonly at: Point2; readonly circuits: number }[];
}

export const straight = ([a, b]: Point2, [u, v]: Point2): number => Math.abs(a - u) + Math.abs(b - v);

/** Whether a place, in the frame of the lot, is by some steel. */
export function nearSteel(frame: LotFrame): (members: readonly Member[], at: Point2) => boolean {
  const known = new WeakMap<readonly Member[], { readonly box: ReturnType<typeof boxOf>; by: Map<string, boolean> }>();
  return (members, at) => {
    let own = known.get(members);
    if (own === undefined) {
      const ends = members.flatMap(({ from, to }) => [from, to].map(([x, y]) => frame.into([x, y])));
      own = { box: widened(boxOf(ends), BY_STEEL), by: new Map() };
      known.set(members, own);
    }
    const [u, v] = at;
    if (u < own.box.minX || u > own.box.maxX || v < own.box.minY || v > own.box.maxY) return false;
    const key = `${u} ${v}`;
    let isBy = own.by.get(key);
    if (isBy === undefined) {
      const place = frame.outOf(at);
      isBy = members.some((member) => away(member, place) <= BY_STEEL);
      own.by.set(key, isBy);
    }
    return isBy;
  };
}

/**
 * What a place weighs, in the frame of the lot: branches along the lot and square to it, the feeder and its trench. To the
 * canopies that it stands by they go overhead; to others in the ground, up at the place where trench and branches come to
 * least. Feet of branch.
 */
export function weightsOf(
  frame: LotFrame,
  isBy: (members: readonly Member[], at: Point2) => boolean,
  entryHeight: number,
  ends: readonly End[],
  { fedBy, gaps, by, trench: dig }: Wish,
): Weights {
  const flat = ends.map(({ at: [x, y], circuits }) => ({ at: frame.into([x, y]), circuits }));
  const rises = ends.map(({ at: [, , z] }) => Math.abs(z - entryHeight));
  const source = fedBy && frame.into(fedBy.at);
  const trenches = fedBy ? [fedBy.at, ...fedBy.trenches].map((at) => frame.into(at)) : [];
  const feeder = (at: Point2): number => (source ? straight(source, at) : 0);
  const trench = (at: Point2): number =>
    source ? trenches.reduce((near, one) => Math.min(near, straight(one, at)), Number.POSITIVE_INFINITY) : 0;
  /** Up and over between two places across the rows. */
  const over = (a: Point2, b: Point2): number => {
    if (gaps.at.length === 0) return 0;
    const [low, high] = [Math.min(a[gaps.along], b[gaps.along]), Math.max(a[gaps.along], b[gaps.along])];
    return OVER_AISLE * gaps.at.filter((gap) => gap > low && gap < high).length;
  };
  const canopies = by.map(({ members, risers, ends: own }) => {
    const circuits = own.reduce((sum, i) => sum + flat[i]!.circuits, 0);
    const ups = risers.map((riser) => {
      const at = frame.into(riser);
      return { at, onward: own.reduce((sum, i) => sum + flat[i]!.circuits * straight(at, flat[i]!.at), 0) };
    });
    return { members, own, circuits, ups };
  });
  /** Where the branches to each canopy come up; null to those that are reached overhead. */
  const risersFrom = (at: Point2): readonly (Point2 | null | undefined)[] =>
    canopies.map(({ members, circuits, ups }) => {
      if (isBy(members, at)) return null;
      let [best, least]: [Point2 | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
      for (const up of ups) {
        const weight = straight(at, up.at) * (dig + circuits) + up.onward;
        if (weight < least) [best, least] = [up.at, weight];
      }
      return best;
    });
  const lengthsBy = (at: Point2, risers: readonly (Point2 | null | undefined)[]): readonly number[] => {
    const lengths = flat.map((one, i) => straight(one.at, at) + rises[i]! + over(one.at, at));
    canopies.forEach(({ own }, k) => {
      const riser = risers[k];
      if (riser === null) return;
      for (const i of own)
        lengths[i] =
          riser === undefined
            ? Number.POSITIVE_INFINITY
            : straight(at, riser) + straight(riser, flat[i]!.at) + entryHeight + 2 * BURIED + ends[i]!.at[2];
    });
    return lengths;
  };
  const dugBy = (at: Point2, risers: readonly (Point2 | null | undefined)[]): number =>
    risers.reduce<number>((sum, riser) => sum + (riser ? straight(at, riser) : 0), 0);
  return {
    lengths: (at) => lengthsBy(at, risersFrom(at)),
    feeder,
    trench,
    dug: (at) => dugBy(at, risersFrom(at)),
    flat,
    weigh: (at) => {
      const risers = risersFrom(at);
      return (
        lengthsBy(at, risers).reduce((sum, feet, i) => sum + feet * flat[i]!.circuits, 0) +
        dig * dugBy(at, risers) +
        (fedBy ? fedBy.feeder * feeder(at) + fedBy.trench * trench(at) : 0)
      );
    },
  };
}
