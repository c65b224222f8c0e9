import { kept } from '../../kept/kept.ts';
import { boxOf, widened } from '../../plane/box.ts';
import type { Member, Point2 } from '../../site/site.ts';
import { frameOf, type LotFrame } from '../raceways/lattice/lot-frame.ts';
import { away } from '../raceways/lattice/steel.ts';
import type { End, Wish } from './place-finder.ts';
import { placeKey } from './place-key.ts';
import { overheadSum } from './rough-weight.ts';

/** Up over an aisle and down again, feet: raceways cross it so much higher than they hang. */
const OVER_AISLE = 6;
/** As deep as conduits lie in the ground, near enough, feet. */
const BURIED = 2;
const NO_GAPS = { along: 0, at: [] } as const;
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
  /** The same but for rounding, in a few steps for any number of ends. */
  readonly rough: (at: Point2) => number;
  readonly feeder: (at: Point2) => number;
  readonly trench: (at: Point2) => number;
  /** Feet that branches lie in the ground to canopies that it does not stand by. */
  readonly dug: (at: Point2) => number;
  readonly flat: readonly { readonly at: Point2; readonly circuits: number }[];
}

export const straight = ([a, b]: Point2, [u, v]: Point2): number => Math.abs(a - u) + Math.abs(b - v);

/** What was found of some steel in a frame that is turned so: its box, and by place in whole feet whether that is by it. */
const knownBy = kept((members: readonly Member[], turn: number) => {
  const { into } = frameOf(turn);
  const ends = members.flatMap(({ from, to }) => [from, to].map(([x, y]) => into([x, y])));
  return { box: widened(boxOf(ends), BY_STEEL), by: new Map<number, boolean>() };
});

/** Beyond so many places by one piece of steel they are looked at anew. */
const MOST_PLACES = 50_000;

/** Whether a place, in the frame of the lot, is by some steel. */
export function nearSteel({ turn, outOf }: LotFrame): (members: readonly Member[], at: Point2) => boolean {
  const own = new Map<readonly Member[], ReturnType<typeof knownBy>>();
  return (members, at) => {
    let known = own.get(members);
    if (known === undefined) {
      known = knownBy(members, turn);
      own.set(members, known);
    }
    const { box, by } = known;
    const [u, v] = at;
    if (u < box.minX || u > box.maxX || v < box.minY || v > box.maxY) return false;
    const isNear = (): boolean => {
      const place = outOf(at);
      return members.some((member) => away(member, place) <= BY_STEEL);
    };
    if (!Number.isInteger(u) || !Number.isInteger(v)) return isNear();
    const key = placeKey(u, v);
    let isBy = by.get(key);
    if (isBy === undefined) {
      isBy = isNear();
      if (by.size >= MOST_PLACES) by.clear();
      by.set(key, isBy);
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
    // Of a place that stands by the steel nobody asks for them.
    const ups = once(() => {
      const onward = overheadSum(
        own.map((i) => flat[i]!),
        NO_GAPS,
        0,
      );
      return risers.map((riser) => {
        const at = frame.into(riser);
        return { at, onward: onward(at) };
      });
    });
    return { members, own, circuits, ups };
  });
  const sumOf = (own: readonly number[], feet: (i: number) => number): number =>
    own.reduce((sum, i) => sum + flat[i]!.circuits * feet(i), 0);
  const roughly = (own: readonly number[]) => ({
    overhead: overheadSum(
      own.map((i) => flat[i]!),
      gaps,
      OVER_AISLE,
    ),
    rise: sumOf(own, (i) => rises[i]!),
  });
  const rough = once(() => {
    const under = new Set(canopies.flatMap(({ own }) => own));
    const open = roughly(flat.flatMap((_, i) => (under.has(i) ? [] : [i])));
    const each = canopies.map(({ members, own, circuits, ups }) => ({
      members,
      circuits,
      ups,
      ...roughly(own),
      up: sumOf(own, (i) => entryHeight + 2 * BURIED + ends[i]!.at[2]),
    }));
    return (at: Point2): number => {
      let sum = open.rise + open.overhead(at);
      for (const { members, circuits, ups, overhead, rise, up } of each) {
        if (isBy(members, at)) {
          sum += overhead(at) + rise;
          continue;
        }
        let least = Number.POSITIVE_INFINITY;
        for (const one of ups()) least = Math.min(least, straight(at, one.at) * (dig + circuits) + one.onward);
        sum += least + up;
      }
      return fedBy ? sum + fedBy.feeder * feeder(at) + fedBy.trench * trench(at) : sum;
    };
  });
  /** Where the branches to each canopy come up; null to those that are reached overhead. */
  const risersFrom = (at: Point2): readonly (Point2 | null | undefined)[] =>
    canopies.map(({ members, circuits, ups }) => {
      if (isBy(members, at)) return null;
      let [best, least]: [Point2 | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
      for (const up of ups()) {
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
    rough: (at) => rough()(at),
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

function once<T>(work: () => T): () => T {
  let known: { readonly answer: T } | null = null;
  return () => {
    known ??= { answer: work() };
    return known.answer;
  };
}
