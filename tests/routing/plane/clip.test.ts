import fc from 'fast-check';
import { expect, test } from 'vitest';
import { areaOf } from '../../../routing/plane/area.ts';
import { clippedToBox } from '../../../routing/plane/clip.ts';
import type { Point2 } from '../../../routing/site/site.ts';

const BOX = { minX: 0, minY: 0, maxX: 10, maxY: 6 };

test.each<[string, Point2[], number]>([
  [
    'inside',
    [
      [1, 1],
      [3, 1],
      [3, 2],
      [1, 2],
    ],
    2,
  ],
  [
    'all round it',
    [
      [-5, -5],
      [20, -5],
      [20, 20],
      [-5, 20],
    ],
    60,
  ],
  [
    'over one corner',
    [
      [8, 4],
      [14, 4],
      [14, 9],
      [8, 9],
    ],
    4,
  ],
  [
    'apart from it',
    [
      [20, 0],
      [30, 0],
      [30, 5],
    ],
    0,
  ],
  [
    'touching an edge',
    [
      [10, 0],
      [12, 0],
      [12, 6],
      [10, 6],
    ],
    0,
  ],
  [
    'a triangle cut by two sides',
    [
      [-3, 0],
      [13, 0],
      [5, 8],
    ],
    64 - 2 * 4.5 - 4,
  ],
  [
    'in two parts',
    [
      [-2, 1],
      [12, 1],
      [12, 2],
      [-1, 2],
      [-1, 4],
      [12, 4],
      [12, 5],
      [-2, 5],
    ],
    20,
  ],
  [
    'turned the other way',
    [
      [1, 2],
      [3, 2],
      [3, 1],
      [1, 1],
    ],
    2,
  ],
])('the part of a polygon %s has the area found by hand', (_, outline, area) => {
  expect(areaOf(clippedToBox(outline, BOX))).toBeCloseTo(area, 12);
});

test('of a convex polygon the share of points inside both is the share of its area', () => {
  const corner = fc.tuple(fc.integer({ min: -8, max: 18 }), fc.integer({ min: -8, max: 14 }));
  fc.assert(
    fc.property(corner, corner, corner, (a, b, c) => {
      const whole = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
      fc.pre(whole > 20);
      // A triangle is cut into a fan of equal small ones, and their middles are counted.
      const n = 60;
      let inside = 0;
      for (let i = 0; i < n; i++)
        for (let j = 0; j < n - i; j++)
          for (const [s, t] of j < n - i - 1
            ? [
                [1 / 3, 1 / 3],
                [2 / 3, 2 / 3],
              ]
            : [[1 / 3, 1 / 3]]) {
            const u = (i + s!) / n;
            const v = (j + t!) / n;
            const x = a[0] + u * (b[0] - a[0]) + v * (c[0] - a[0]);
            const y = a[1] + u * (b[1] - a[1]) + v * (c[1] - a[1]);
            if (x > BOX.minX && x < BOX.maxX && y > BOX.minY && y < BOX.maxY) inside++;
          }
      const share = areaOf(clippedToBox([a, b, c], BOX)) / whole;
      expect(Math.abs(share - inside / (n * n))).toBeLessThan(0.06);
    }),
    { numRuns: 60 },
  );
});
