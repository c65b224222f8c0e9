import fc from 'fast-check';
import { expect, it } from 'vitest';
import { insideOf, obstacleOf } from '../../../../routing/plane/obstacle.ts';
import { overlapDepth } from '../../../../routing/plane/overlap-depth.ts';
import { rowsAlongKerb } from '../../../../routing/propose/rows/rows-along-kerb.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Point2 } from '../../../../routing/site/site.ts';

const SHAPE = { width: 9, depth: 18, aisle: 24 };
const lot = (width: number, height: number): readonly Point2[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

it('a lot of 200 by 90 ft has a row along each long kerb and what is left of the short ones', () => {
  const rows = rowsAlongKerb(lot(200, 90), SHAPE);
  // 22 stalls of 9 ft fit on 200 ft; between the two rows of 18 ft and their aisles no 3 more stand clear at the ends.
  expect(rows.map(({ stalls }) => stalls.length).slice(0, 2)).toEqual([22, 22]);
  expect(rows[0]!.stalls[0]).toMatchObject({ width: 9, depth: 18, heading: 270 });
  expect(rows[0]!.stalls[0]!.at).toEqual([expect.closeTo(5.5, 9), expect.closeTo(18, 9)]);
  expect(rows[1]!.stalls[0]!.heading).toBe(90);
});
it('nothing stands on a building, and a building takes a row apart', () => {
  const house: readonly Point2[] = [
    [80, 0],
    [120, 0],
    [120, 30],
    [80, 30],
  ];
  const rows = rowsAlongKerb(lot(200, 90), SHAPE, [house]);
  const low = rows.filter(({ stalls }) => stalls[0]!.heading === 270);
  // 79 ft to its left and 80 ft to its right, of which the slots from 1 ft on count.
  expect(low.map(({ stalls }) => stalls.length)).toEqual([8, 8]);
});
it('too small a lot has none', () => {
  expect(rowsAlongKerb(lot(40, 30), SHAPE)).toEqual([]);
  expect(
    rowsAlongKerb(
      [
        [0, 0],
        [1, 1],
      ],
      SHAPE,
    ),
  ).toEqual([]);
});
it('stalls of any lot lie in it and not on each other, whichever way its outline runs', () => {
  const any = fc
    .array(fc.tuple(fc.double({ min: 60, max: 300, noNaN: true }), fc.double({ min: 0.6, max: 1, noNaN: true })), {
      minLength: 3,
      maxLength: 9,
    })
    .map((spokes) =>
      spokes.map(
        ([r, share], i): Point2 => [
          r * share * Math.cos((2 * Math.PI * i) / spokes.length),
          r * share * Math.sin((2 * Math.PI * i) / spokes.length),
        ],
      ),
    );
  fc.assert(
    fc.property(any, fc.boolean(), (outline, back) => {
      const ring = obstacleOf(outline);
      const stalls = rowsAlongKerb(back ? [...outline].reverse() : outline, SHAPE).flatMap((row) =>
        row.stalls.map((stall) => stallRectangle({ id: '', ...stall })),
      );
      for (const [i, stall] of stalls.entries()) {
        const [mx, my] = [0, 1].map((axis) => stall.reduce((sum, at) => sum + at[axis as 0 | 1], 0) / 4) as [
          number,
          number,
        ];
        // A tenth of a foot in from each corner.
        for (const [x, y] of stall) expect(insideOf(ring, x + (mx - x) * 0.08, y + (my - y) * 0.08)).toBe(true);
        for (const other of stalls.slice(i + 1)) expect(overlapDepth(stall, other)).toBeLessThan(0.31);
      }
    }),
    { numRuns: 60 },
  );
});
