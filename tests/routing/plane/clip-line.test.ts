import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clippedLine } from '../../../routing/plane/clip-line.ts';

const BOX = { minX: -3, minY: -2, maxX: 5, maxY: 4 };
const place = fc.tuple(
  fc.double({ min: -20, max: 20, noNaN: true }),
  fc.double({ min: -20, max: 20, noNaN: true }),
) as fc.Arbitrary<[number, number]>;
const EPS = 1e-9;
const within = ([x, y]: readonly [number, number], by: number): boolean =>
  x >= BOX.minX - by && x <= BOX.maxX + by && y >= BOX.minY - by && y <= BOX.maxY + by;

test('what is kept of a line lies in the box, and what is cut off outside', () => {
  fc.assert(
    fc.property(place, place, fc.double({ min: 0, max: 1, noNaN: true }), (from, to, share) => {
      const at = (t: number): [number, number] => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
      const kept = clippedLine(from, to, BOX);
      const point = at(share);
      if (kept && share >= kept.begins && share <= kept.ends) expect(within(point, EPS)).toBe(true);
      if (!kept || share < kept.begins - EPS || share > kept.ends + EPS) expect(within(point, -1e-7)).toBe(false);
    }),
    { numRuns: 2000 },
  );
});

test('a line along an edge is kept, one beside the box is not', () => {
  expect(clippedLine([-3, -10], [-3, 10], BOX)).toEqual({ begins: 0.4, ends: 0.7 });
  expect(clippedLine([-3.01, -10], [-3.01, 10], BOX)).toBeNull();
  expect(clippedLine([0, 0], [0, 0], BOX)).toEqual({ begins: 0, ends: 1 });
});
