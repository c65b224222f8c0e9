import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { tautPath } from './taut-path.ts';

type Sides = readonly [x0: number, y0: number, x1: number, y1: number];

const box = ([x0, y0, x1, y1]: Sides): Point2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/**
 * The open interior of a box meets a segment, in whole numbers: the segment is cut to the box's four half-planes with
 * fractions compared by cross-multiplication, so that nothing is rounded.
 */
function cuts([x0, y0, x1, y1]: Sides, [ax, ay]: Point2, [bx, by]: Point2): boolean {
  let from: [number, number] = [0, 1];
  let to: [number, number] = [1, 1];
  const less = (a: [number, number], b: [number, number]): boolean => a[0] * b[1] < b[0] * a[1];
  for (const [at, rate] of [
    [ax - x0, bx - ax],
    [x1 - ax, ax - bx],
    [ay - y0, by - ay],
    [y1 - ay, ay - by],
  ] as [number, number][]) {
    // Inside where at + t * rate > 0.
    if (rate === 0) {
      if (at <= 0) return false;
    } else if (rate > 0) {
      if (less(from, [-at, rate])) from = [-at, rate];
    } else if (less([at, -rate], to)) to = [at, -rate];
  }
  return less(from, to);
}

/** Slow and plain: every corner, every pair, every box; then Floyd and Warshall. */
function byBruteForce(from: Point2, to: Point2, boxes: readonly Sides[]): number {
  const nodes = [from, to, ...boxes.flatMap(box)];
  const lengths = nodes.map((a) =>
    nodes.map((b) =>
      boxes.some((sides) => cuts(sides, a, b)) ? Number.POSITIVE_INFINITY : Math.hypot(a[0] - b[0], a[1] - b[1]),
    ),
  );
  for (let k = 0; k < nodes.length; k++)
    for (let i = 0; i < nodes.length; i++)
      for (let j = 0; j < nodes.length; j++)
        lengths[i]![j] = Math.min(lengths[i]![j]!, lengths[i]![k]! + lengths[k]![j]!);
  return lengths[0]![1]!;
}

const whole = fc.integer({ min: 0, max: 12 });
const spot = fc.tuple(whole, whole);
const sides = fc
  .tuple(whole, whole, fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }))
  .map(([x, y, w, h]): Sides => [x, y, x + w, y + h]);
const boxes = fc.array(sides, { maxLength: 7 });
const inside = ([x, y]: Point2, [x0, y0, x1, y1]: Sides): boolean => x > x0 && x < x1 && y > y0 && y < y1;

// Sixty-fourths: coincidences come up, but nothing lies a billionth of a foot from anything, where touching begins.
const real = (min: number, max: number) => fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64);
const turned = fc
  .record({ at: fc.tuple(real(0, 40), real(0, 40)), size: fc.tuple(real(1, 15), real(1, 15)), degrees: real(0, 360) })
  .map(({ at, size, degrees }) => rectangleAt(at, size, degrees));
const place = fc.tuple(real(0, 40), real(0, 40));

describe('a taut path among boxes', () => {
  test('is as long as a brute-force visibility graph says, boxes touching, overlapping and enclosing included', () => {
    let closed = 0;
    fc.assert(
      fc.property(spot, spot, boxes, (from, to, among) => {
        const ends = among.some((one) => inside(from, one) || inside(to, one));
        const expected = ends ? Number.POSITIVE_INFINITY : byBruteForce(from, to, among);
        const path = tautPath(from, to, among.map(box));
        if (expected === Number.POSITIVE_INFINITY) {
          closed++;
          expect(path).toBeNull();
        } else expect(path?.length).toBeCloseTo(expected, 9);
      }),
      { numRuns: 2000 },
    );
    expect(closed).toBeGreaterThan(50);
  });

  test('runs between two boxes that share an edge', () => {
    const path = tautPath([5, -3], [5, 13], [box([0, 0, 5, 10]), box([5, 0, 10, 10])]);
    expect(path?.length).toBe(16);
  });

  test('runs through the point in which two boxes touch by their corners', () => {
    const path = tautPath([10, 0], [0, 10], [box([0, 0, 5, 5]), box([5, 5, 10, 10])]);
    expect(path?.length).toBeCloseTo(10 * Math.SQRT2, 12);
  });

  test('does not run along an edge that another box covers', () => {
    const path = tautPath([5, -3], [5, 13], [box([0, 0, 5, 10]), box([4, 0, 10, 10])]);
    // Round the left: (5,-3) (0,0) (0,10) (5,13); round the right the same.
    expect(path?.length).toBeCloseTo(10 + 2 * Math.hypot(5, 3), 12);
  });

  test('is null when the start is walled in', () => {
    const walls = [box([0, 0, 10, 1]), box([9, 0, 10, 10]), box([0, 9, 10, 10]), box([0, 0, 1, 10])];
    expect(tautPath([5, 5], [20, 5], walls)).toBeNull();
  });

  test('starts and ends on outlines, and may be no length at all', () => {
    const car = box([0, 0, 6, 15]);
    expect(tautPath([0, 3], [6, 3], [car])?.length).toBe(3 + 6 + 3);
    expect(tautPath([0, 3], [0, 3], [car])).toEqual({ length: 0, path: [[0, 3]] });
  });
});

describe('a taut path among rectangles at any angle', () => {
  test('never beats the straight line, and equals it where nothing is in the way', () => {
    fc.assert(
      fc.property(place, place, fc.array(turned, { maxLength: 6 }), (from, to, among) => {
        const straight = Math.hypot(to[0] - from[0], to[1] - from[1]);
        const path = tautPath(from, to, among);
        if (path) expect(path.length).toBeGreaterThanOrEqual(straight - 1e-9);
        expect(tautPath(from, to, [])?.length).toBeCloseTo(straight, 12);
      }),
    );
  });

  test('is as long as its own polyline, and that polyline enters nothing', () => {
    fc.assert(
      fc.property(place, place, fc.array(turned, { maxLength: 6 }), (from, to, among) => {
        const path = tautPath(from, to, among);
        if (!path) return;
        const legs = path.path.slice(1).map((b, i): [Point2, Point2] => [path.path[i]!, b]);
        const sum = legs.reduce((total, [a, b]) => total + Math.hypot(a[0] - b[0], a[1] - b[1]), 0);
        expect(path.length).toBeCloseTo(sum, 9);
        for (const [a, b] of legs)
          for (let t = 0.05; t < 1; t += 0.1)
            for (const one of among)
              expect(depthIn(one, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])).toBeLessThan(1e-7);
      }),
    );
  });

  test('never gets shorter when an obstacle is added', () => {
    fc.assert(
      fc.property(place, place, fc.array(turned, { maxLength: 5 }), turned, (from, to, among, one) => {
        const before = tautPath(from, to, among)?.length ?? Number.POSITIVE_INFINITY;
        const after = tautPath(from, to, [...among, one])?.length ?? Number.POSITIVE_INFINITY;
        expect(after).toBeGreaterThanOrEqual(before - 1e-9);
      }),
    );
  });

  test('keeps its length when everything is moved, turned, mirrored, listed otherwise or walked backwards', () => {
    fc.assert(
      fc.property(
        place,
        place,
        fc.array(turned, { maxLength: 5 }),
        fc.tuple(real(-5000, 5000), real(-5000, 5000), real(0, 6), fc.boolean()),
        (from, to, among, [dx, dy, angle, mirror]) => {
          const move = ([x, y]: Point2): Point2 => {
            const u = mirror ? -x : x;
            return [u * Math.cos(angle) - y * Math.sin(angle) + dx, u * Math.sin(angle) + y * Math.cos(angle) + dy];
          };
          const length = tautPath(from, to, among)?.length ?? -1;
          const moved = among.toReversed().map((one) => one.map(move));
          expect(tautPath(move(to), move(from), moved)?.length ?? -1).toBeCloseTo(length, 6);
        },
      ),
    );
  });

  test('may follow the side of a row of vehicles that touch, whatever way the row is turned', () => {
    for (let degrees = 0; degrees < 360; degrees += 7.3) {
      const c = Math.cos((degrees * Math.PI) / 180);
      const s = Math.sin((degrees * Math.PI) / 180);
      const turn = (x: number, y: number): Point2 => [c * x - s * y, s * x + c * y];
      const cars = [0, 1, 2, 3].map((k) => rectangleAt(turn(8 * k, 0), [8, 16], degrees));
      // From the middle of the gap line between cars 1 and 2, at the head, to the tail: along their common side.
      expect(tautPath(turn(12, 8), turn(12, -8), cars)?.length).toBeCloseTo(16, 9);
    }
  });
});

/** How deep a point is in a convex polygon, counter-clockwise; negative outside. */
function depthIn(polygon: readonly Point2[], [x, y]: Point2): number {
  return Math.min(
    ...polygon.map(([ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length]!;
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
    }),
  );
}
