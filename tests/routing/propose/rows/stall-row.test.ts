import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RowShape, stallsThatFit } from '../../../../routing/propose/rows/row-shape.ts';
import type { SlotUse } from '../../../../routing/propose/rows/row-slots.ts';
import { stallRow } from '../../../../routing/propose/rows/stall-row.ts';
import { usualAisle } from '../../../../routing/propose/rows/usual-aisle.ts';
import { usualStall } from '../../../../routing/propose/rows/usual-stall.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Stall } from '../../../../routing/site/site.ts';
import { BUILT_IN_VEHICLES } from '../../../../routing/site/vehicles.ts';
import { parkedRectangle } from '../../../../routing/standing/parked.ts';
import { PLAIN_ROW } from './plain-row.ts';

const uses = (...all: (readonly [number, SlotUse])[]): ReadonlyMap<number, SlotUse> => new Map(all);

describe('a row of stalls', () => {
  test('stands on the left of its line, entered from it, numbered from its start', () => {
    const { stalls, length, across } = stallRow([10, 5], [100, 5], 3, PLAIN_ROW);
    expect(stalls.map(({ at }) => at)).toEqual([
      [14.5, 5],
      [23.5, 5],
      [32.5, 5],
    ]);
    expect(stalls.map(({ heading }) => heading)).toEqual([90, 90, 90]);
    expect([length, across]).toEqual([27, 18]);
  });

  test('on the right of its line it is the mirror image', () => {
    const { stalls, aisles } = stallRow([0, 0], [90, 0], 1, { ...PLAIN_ROW, side: 'right' });
    expect(stalls[0]).toMatchObject({ at: [4.5, 0], heading: 270 });
    expect(aisles[0]).toEqual([
      [0, 24],
      [9, 24],
      [9, 0],
      [0, 0],
    ]);
  });

  test('drawn along the kerb it is entered from a stall depth away, and looks at the kerb', () => {
    const { stalls } = stallRow([0, 0], [90, 0], 2, { ...PLAIN_ROW, line: 'head' });
    expect(stalls.map(({ at, heading }) => [at, heading])).toEqual([
      [[4.5, 18], 270],
      [[13.5, 18], 270],
    ]);
  });

  test('across the aisle the second row looks the other way', () => {
    const { stalls, aisles, across } = stallRow([0, 0], [90, 0], 2, { ...PLAIN_ROW, rows: 'across' });
    expect(stalls.map(({ at, heading }) => [at, heading])).toEqual([
      [[4.5, 0], 90],
      [[13.5, 0], 90],
      [[4.5, -24], 270],
      [[13.5, -24], 270],
    ]);
    // Snohomish, Portsmouth and Redwood City: 18 ft stalls and a 24 ft aisle make a 60 ft module.
    expect([aisles.length, across]).toEqual([1, 60]);
  });

  test('head to head the rows share their heads and have an aisle each', () => {
    const { stalls, aisles } = stallRow([0, 0], [90, 0], 2, { ...PLAIN_ROW, rows: 'heads' });
    expect(stalls.map(({ at, heading }) => [at, heading])).toEqual([
      [[4.5, 0], 90],
      [[13.5, 0], 90],
      [[4.5, 36], 270],
      [[13.5, 36], 270],
    ]);
    expect(aisles).toHaveLength(2);
  });

  test('an accessible stall has an access aisle after it, which the next shares (2010 ADA Standards 502.3)', () => {
    const { stalls, access, length } = stallRow([0, 0], [200, 0], 4, {
      ...PLAIN_ROW,
      uses: uses([1, 'van-accessible'], [2, 'accessible'], [4, 'accessible']),
    });
    expect(stalls.map(({ width }) => width)).toEqual([11, 9, 9, 9]);
    expect(access).toHaveLength(2);
    expect(access[0]!.map(([x]) => x)).toEqual([16, 16, 11, 11]);
    expect(length).toBe(11 + 5 + 9 + 9 + 9 + 5);
  });

  test('a row narrower than an accessible stall gives it 96 in., and a van 132 in.', () => {
    const { stalls } = stallRow([0, 0], [200, 0], 3, {
      ...PLAIN_ROW,
      width: 7.5,
      uses: uses([1, 'accessible'], [2, 'van-accessible']),
    });
    expect(stalls.map(({ width }) => width * 12)).toEqual([96, 132, 90]);
  });

  test('parallel stalls lie end to end along the kerb, driven into the way the line goes', () => {
    const { stalls, across, length } = stallRow([0, 0], [90, 0], 3, { ...PLAIN_ROW, angle: 0, width: 8, depth: 22 });
    expect(stalls.map(({ at, heading }) => [at, heading])).toEqual([
      [[0, 4], 0],
      [[22, 4], 0],
      [[44, 4], 0],
    ]);
    expect([length, across]).toEqual([66, 8]);
  });

  test('as many stalls fit as do, with their lean: 13 at 60° in 144.1 ft and not in 144 ft (worked by hand)', () => {
    const slanting = { ...PLAIN_ROW, angle: 60 };
    expect(stallsThatFit(144.11, slanting)).toBe(13);
    expect(stallsThatFit(144, slanting)).toBe(12);
    expect(stallsThatFit(108, PLAIN_ROW)).toBe(12);
    expect(stallsThatFit(8, PLAIN_ROW)).toBe(0);
  });

  test('a line of no length and a count of none are faults of the caller', () => {
    expect(() => stallRow([1, 1], [1, 1], 2, PLAIN_ROW)).toThrow(RangeError);
    expect(() => stallRow([0, 0], [9, 0], 0, PLAIN_ROW)).toThrow(RangeError);
    expect(() => stallRow([0, 0], [9, 0], 1.5, PLAIN_ROW)).toThrow(RangeError);
  });

  test('the usual aisle is the published one of the next steeper angle', () => {
    expect([45, 60, 75, 90].map(usualAisle)).toEqual([13.5, 18.5, 23, 24]);
    expect(usualAisle(50)).toBe(18.5);
  });

  test('every usual vehicle stands inside a usual stall that is parallel to its aisle', () => {
    const { width, depth } = usualStall(0);
    const stall: Stall = { id: 'S', at: [0, 0], width, depth, heading: 0 };
    for (const vehicle of BUILT_IN_VEHICLES.values())
      for (const [x, y] of parkedRectangle(stall, vehicle, 2)) {
        expect(x >= 0 && x <= depth).toBe(true);
        expect(Math.abs(y)).toBeLessThanOrEqual(width / 2);
      }
  });
});

const anyShape: fc.Arbitrary<RowShape> = fc.record({
  width: fc.integer({ min: 32, max: 48 }).map((n) => n / 4),
  depth: fc.integer({ min: 60, max: 88 }).map((n) => n / 4),
  angle: fc.constantFrom(90, 75, 60, 45, 30, 0),
  lean: fc.constantFrom('forward' as const, 'back' as const),
  rows: fc.constantFrom('one' as const, 'across' as const, 'heads' as const),
  aisle: fc.constantFrom(0, 13.5, 24),
  line: fc.constantFrom('entry' as const, 'head' as const),
  side: fc.constantFrom('left' as const, 'right' as const),
  uses: fc
    .array(fc.tuple(fc.integer({ min: 1, max: 16 }), fc.constantFrom<SlotUse>('accessible', 'van-accessible')), {
      maxLength: 4,
    })
    .map((all) => new Map(all)),
  accessibleWidth: fc.constant(8),
  vanWidth: fc.constant(11),
  accessAisle: fc.constant(5),
});

const anyPoint = fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }));

/** How deep two rectangles overlap: the least way to part them, or less than 0 where they are apart. */
function overlap(a: readonly Point2[], b: readonly Point2[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [p, q] of [
    [a, b],
    [b, a],
  ] as const)
    for (let i = 0; i < 4; i++) {
      const [ax, ay] = p[i]!;
      const [bx, by] = p[(i + 1) % 4]!;
      const length = Math.hypot(bx - ax, by - ay);
      const along = ([x, y]: Point2): number => ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length;
      const inner = Math.max(...p.map(along));
      const other = Math.min(...q.map(along));
      const innerLow = Math.min(...p.map(along));
      const otherHigh = Math.max(...q.map(along));
      least = Math.min(least, inner - other, otherHigh - innerLow);
    }
  return least;
}

test('no two stalls of any row overlap, nor a stall and an access aisle', () => {
  fc.assert(
    fc.property(anyShape, fc.integer({ min: 1, max: 8 }), anyPoint, anyPoint, (shape, count, from, to) => {
      fc.pre(Math.hypot(from[0] - to[0], from[1] - to[1]) > 1);
      const row = stallRow(from, to, count, shape);
      const grounds = [
        ...row.stalls.map((stall) => [...stallRectangle({ id: 'S', ...stall } as Stall)] as Point2[]),
        ...row.access.map((outline) => [...outline]),
      ];
      for (let i = 0; i < grounds.length; i++)
        for (let j = 0; j < i; j++) expect(overlap(grounds[i]!, grounds[j]!)).toBeLessThan(1e-6);
    }),
    { numRuns: 300 },
  );
});

test('a row that fits lies along its line from end to end, and one stall more would not', () => {
  fc.assert(
    fc.property(anyShape, fc.integer({ min: 20, max: 300 }), (shape, length) => {
      const count = stallsThatFit(length, shape);
      fc.pre(count > 0);
      const row = stallRow([0, 0], [length, 0], count, shape);
      expect(row.length).toBeLessThanOrEqual(length + 1e-6);
      for (const stall of row.stalls)
        for (const [x] of stallRectangle({ id: 'S', ...stall } as Stall)) {
          expect(x).toBeGreaterThan(-1e-6);
          expect(x).toBeLessThan(row.length + 1e-6);
        }
      expect(stallRow([0, 0], [length, 0], count + 1, shape).length).toBeGreaterThan(length);
    }),
    { numRuns: 300 },
  );
});
