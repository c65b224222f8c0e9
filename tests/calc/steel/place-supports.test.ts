import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Lay, placeSupports } from '../../../calc/steel/place-supports.ts';
import { roomFor, takenUp, tiersOf, widthFor } from '../../../calc/steel/trapeze.ts';

const lay = (of: string, from: number, to: number, first = 3, last = first, spacing = 10): Lay => ({
  of,
  from,
  to,
  first,
  last,
  spacing,
  isNipple: to - from <= 2,
});
const places = (lays: readonly Lay[], zones: [number, number][] | null = null): number[] =>
  placeSupports(lays, zones).map(({ at }) => at);

describe('supports along a raceway', () => {
  test('50 ft of one conduit: 3 ft from the box, then every 10', () => {
    expect(places([lay('a', 0, 50)])).toEqual([3, 13, 23, 33, 43, 50]);
  });
  test('conduits side by side hang from the same supports, and each has its own at its box', () => {
    const supports = placeSupports([lay('a', 0, 50), lay('b', 0, 25)], null);
    expect(supports.map(({ at, lays }) => [at, lays.length])).toEqual([
      [3, 2],
      [13, 2],
      [23, 2],
      [33, 1],
      [43, 1],
      [50, 1],
    ]);
  });
  test('a support stands where steel is: purlins 8 ft apart are skipped only where the span allows it', () => {
    const zones = [0, 8, 16, 24, 32].map((x): [number, number] => [x, x]);
    expect(placeSupports([lay('a', 0, 32, 5)], zones).map(({ at, held }) => [at, held])).toEqual([
      [0, true],
      [8, true],
      [16, true],
      [24, true],
      [32, true],
    ]);
    const close = [0, 4, 8, 12, 16, 20, 24].map((x): [number, number] => [x, x]);
    expect(places([lay('a', 0, 24, 5)], close)).toEqual([4, 12, 20]);
  });
  test('past the last steel a support is asked for all the same, from a stringer', () => {
    const supports = placeSupports(
      [lay('a', 0, 40, 5)],
      [
        [0, 6],
        [30, 40],
      ],
    );
    expect(supports.map(({ at, held }) => [at, held])).toEqual([
      [5, true],
      [6, true],
      [16, false],
      [26, false],
      [36, true],
    ]);
  });
  test('a nipple needs none', () => {
    expect(places([lay('a', 4, 6)])).toEqual([]);
  });
});

/** The fewest supports on a grid that do, by trying every number of them: no step of the planner's. */
function fewest(lays: readonly Lay[], grid: readonly number[]): number {
  const does = (chosen: readonly number[]): boolean =>
    lays.every(({ from, to, first, last, spacing }) => {
      if (to - from <= 2) return true;
      const own = chosen.filter((at) => at >= from && at <= to);
      if (own.length === 0 || own[0]! > Math.min(to, from + first)) return false;
      if (own.at(-1)! < to - last) return false;
      return own.every((at, i) => i === 0 || at - own[i - 1]! <= spacing);
    });
  const choose = (count: number, start: number, chosen: readonly number[]): boolean => {
    if (count === 0) return does(chosen);
    for (let i = start; i <= grid.length - count; i++) if (choose(count - 1, i + 1, [...chosen, grid[i]!])) return true;
    return false;
  };
  for (let count = 0; ; count++) if (choose(count, 0, [])) return count;
}

test('no fewer supports would do, by an independent count', () => {
  const anyLay = fc
    .tuple(
      fc.integer({ min: 0, max: 8 }),
      fc.integer({ min: 3, max: 10 }),
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 3, max: 5 }),
    )
    .map(([from, long, near, spacing]) => lay('x', from, Math.min(14, from + long), near, near, spacing));
  fc.assert(
    fc.property(fc.array(anyLay, { minLength: 1, maxLength: 4 }), (lays) => {
      const grid = Array.from({ length: 15 }, (_, i) => i);
      expect(placeSupports(lays, null)).toHaveLength(fewest(lays, grid));
    }),
    { numRuns: 120 },
  );
});

describe('trapezes', () => {
  const conduit = (tradeSize: string) => ({ method: 'EMT' as const, tradeSize });
  test('two 3/4 in EMT take 0.922 x 2 + 1 + 3 in, on 12 in', () => {
    expect(takenUp([conduit('3/4'), conduit('3/4')])).toBeCloseTo(5.844, 9);
    expect(widthFor([conduit('3/4'), conduit('3/4')])).toBe(12);
    // (12 - 5.844) / 1.922 = 3.2
    expect(roomFor([conduit('3/4'), conduit('3/4')])).toBe(3);
  });
  test('what does not fit on 36 in goes on a second tier', () => {
    const twelve = Array.from({ length: 12 }, () => conduit('2'));
    // n x 2.197 + (n - 1) + 3 is no more than 36 up to 10 of them.
    expect(tiersOf(twelve).map(({ length }) => length)).toEqual([10, 2]);
    expect(widthFor(twelve.slice(0, 10))).toBe(36);
  });
});
