import type { Point2 } from '../../site/site.ts';

interface Flat {
  readonly at: Point2;
  readonly circuits: number;
}

/** What some ends weigh from any place that reaches them overhead, by prefix sums: a few steps for any number of them. */
export function overheadSum(
  own: readonly Flat[],
  gaps: { readonly along: 0 | 1; readonly at: readonly number[] },
  overAisle: number,
): (at: Point2) => number {
  const [u, v] = [apartAlong(own, 0), apartAlong(own, 1)];
  const beyond = gaps.at.map((gap) => {
    const across = (isThere: (value: number) => boolean): number =>
      own.reduce((sum, { at, circuits }) => (isThere(at[gaps.along]) ? sum + circuits : sum), 0);
    return { gap, low: across((value) => value < gap), high: across((value) => value > gap) };
  });
  return (at) => {
    const across = at[gaps.along];
    let over = 0;
    for (const { gap, low, high } of beyond) over += across < gap ? high : across > gap ? low : 0;
    return u(at[0]) + v(at[1]) + overAisle * over;
  };
}

/** Feet of all circuits along one axis, from any coordinate. */
function apartAlong(own: readonly Flat[], axis: 0 | 1): (from: number) => number {
  const sorted = own.map(({ at, circuits }) => [at[axis], circuits] as const).sort((a, b) => a[0] - b[0]);
  const values = Float64Array.from(sorted, ([value]) => value);
  /** Circuits, and circuits times place, of all that lie before each. */
  const count = new Float64Array(sorted.length + 1);
  const moment = new Float64Array(sorted.length + 1);
  sorted.forEach(([value, circuits], i) => {
    count[i + 1] = count[i]! + circuits;
    moment[i + 1] = moment[i]! + circuits * value;
  });
  const [all, whole] = [count[sorted.length]!, moment[sorted.length]!];
  return (from) => {
    let [low, high] = [0, values.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (values[middle]! < from) low = middle + 1;
      else high = middle;
    }
    return from * (2 * count[low]! - all) + whole - 2 * moment[low]!;
  };
}

/** Nearer to each other than such a share, two weights may be in the other order once they are worked out whole. */
const HAIR = 1e-8;
/** After so many places at the front that are not taken, the rest is put in order at once. */
const SCANS = 4;

export interface Weighed {
  readonly at: Point2;
  readonly weighed: number;
  /** Not by a rough weight. */
  readonly isWhole?: true;
}

/**
 * Places, the least weighed first, those of no weight left out. Only those that come to the front with others are weighed whole: the
 * others are told apart by a rough weight, which is the same but for rounding.
 */
export function* leastFirst(
  places: readonly Point2[],
  rough: (at: Point2) => number,
  weigh: (at: Point2) => number,
): Generator<Weighed> {
  let left = places.map((at) => ({ at, rough: rough(at) })).filter((one) => one.rough < Number.POSITIVE_INFINITY);
  // One that is like no other has its place in the order as it is.
  const whole = (own: readonly (typeof left)[number][]): readonly Weighed[] =>
    own.length === 1
      ? [{ at: own[0]!.at, weighed: own[0]!.rough }]
      : own
          .map(({ at }) => ({ at, weighed: weigh(at), isWhole: true as const }))
          .sort((a, b) => a.weighed - b.weighed || a.at[0] - b.at[0] || a.at[1] - b.at[1]);
  for (let scan = 0; scan < SCANS && left.length > 0; scan++) {
    let least = Number.POSITIVE_INFINITY;
    for (const one of left) if (one.rough < least) least = one.rough;
    let count = 0;
    // All that follow one upon the other by hairs.
    for (let to = least; ; ) {
      const bound = to + HAIR * (1 + Math.abs(to));
      let [found, most] = [0, to];
      for (const one of left)
        if (one.rough <= bound) {
          found++;
          if (one.rough > most) most = one.rough;
        }
      to = most;
      if (found === count) {
        yield* whole(left.filter((one) => one.rough <= bound));
        left = left.filter((one) => one.rough > bound);
        break;
      }
      count = found;
    }
  }
  left.sort((a, b) => a.rough - b.rough);
  for (let i = 0; i < left.length; ) {
    let to = i + 1;
    while (to < left.length && left[to]!.rough <= left[to - 1]!.rough + HAIR * (1 + Math.abs(left[to - 1]!.rough)))
      to++;
    yield* whole(left.slice(i, to));
    i = to;
  }
}
