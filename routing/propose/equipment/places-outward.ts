import type { Box } from '../../plane/box.ts';
import type { Point2 } from '../../site/site.ts';

interface Weighed {
  readonly at: Point2;
  readonly weighed: number;
}

/**
 * Places of a grid within a box, the least weighed first. The weight has to be the sum of distances from some points, along
 * and square, near enough: places are come by from the weighted medians of the points outward, each beside one that was
 * come by before.
 * @param step of the grid
 */
export function* placesOutward(
  points: readonly { readonly at: Point2; readonly circuits: number }[],
  { minX, minY, maxX, maxY }: Box,
  step: number,
  weigh: (at: Point2) => number,
): Generator<Weighed> {
  const low = [Math.ceil(minX / step), Math.ceil(minY / step)] as const;
  const high = [Math.floor(maxX / step), Math.floor(maxY / step)] as const;
  if (low[0] > high[0] || low[1] > high[1]) return;
  const begin = ([0, 1] as const).map((axis) =>
    Math.min(high[axis], Math.max(low[axis], Math.round(median(points, axis) / step))),
  ) as [number, number];
  const wide = high[0] - low[0] + 1;
  const seen = new Set<number>();
  const waiting = heap<Weighed & { readonly i: number; readonly j: number }>(
    (a, b) => a.weighed < b.weighed || (a.weighed === b.weighed && (a.i < b.i || (a.i === b.i && a.j < b.j))),
  );
  const come = (i: number, j: number): void => {
    if (i < low[0] || i > high[0] || j < low[1] || j > high[1]) return;
    const key = (j - low[1]) * wide + i - low[0];
    if (seen.has(key)) return;
    seen.add(key);
    const at = [i * step, j * step] as const;
    waiting.push({ i, j, at, weighed: weigh(at) });
  };
  // Where the weight is not quite such a sum its least is near by.
  for (let least = weigh([begin[0] * step, begin[1] * step]); ; ) {
    const better = AROUND.map(([i, j]): [number, number] => [begin[0] + i, begin[1] + j]).find(
      ([i, j]) => i >= low[0] && i <= high[0] && j >= low[1] && j <= high[1] && weigh([i * step, j * step]) < least,
    );
    if (better === undefined) break;
    [begin[0], begin[1]] = better;
    least = weigh([begin[0] * step, begin[1] * step]);
  }
  come(...begin);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    yield next;
    const { i, j } = next;
    for (const [x, y] of AROUND) come(i + x, j + y);
  }
}

const AROUND = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** The weighted median of one coordinate. */
function median(points: readonly { readonly at: Point2; readonly circuits: number }[], axis: 0 | 1): number {
  const sorted = points.map(({ at, circuits }) => [at[axis], circuits] as const).sort((a, b) => a[0] - b[0]);
  const half = sorted.reduce((sum, [, weight]) => sum + weight, 0) / 2;
  let so = 0;
  for (const [value, weight] of sorted) {
    so += weight;
    if (so >= half) return value;
  }
  return sorted.at(-1)?.[0] ?? 0;
}

interface Heap<T> {
  readonly push: (item: T) => void;
  readonly pop: () => T | undefined;
}

/** A binary heap, the least first. */
function heap<T>(before: (a: T, b: T) => boolean): Heap<T> {
  const items: T[] = [];
  return {
    push: (item) => {
      let i = items.push(item) - 1;
      for (; i > 0; ) {
        const up = (i - 1) >> 1;
        if (!before(item, items[up]!)) break;
        items[i] = items[up]!;
        i = up;
      }
      items[i] = item;
    },
    pop: () => {
      const [first] = items;
      const last = items.pop();
      if (last === undefined || items.length === 0) return first;
      let i = 0;
      for (let child = 1; child < items.length; child = 2 * i + 1) {
        if (child + 1 < items.length && before(items[child + 1]!, items[child]!)) child++;
        if (!before(items[child]!, last)) break;
        items[i] = items[child]!;
        i = child;
      }
      items[i] = last;
      return first;
    },
  };
}
