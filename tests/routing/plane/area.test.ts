import { describe, expect, test } from 'vitest';
import { areaOf, twiceAreaOf } from '../../../routing/plane/area.ts';
import { apart } from '../../../routing/plane/distance.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Point2 } from '../../../routing/site/site.ts';

const TRIANGLE: readonly Point2[] = [
  [0, 0],
  [3, 0],
  [3, 4],
];
// A rectangle of 4 x 3 without a corner of 2 x 1.
const ELL: readonly Point2[] = [
  [0, 0],
  [4, 0],
  [4, 2],
  [2, 2],
  [2, 3],
  [0, 3],
];

describe('the area of a polygon', () => {
  test.each([
    ['a right triangle of 3 and 4', TRIANGLE, 6],
    ['an L', ELL, 10],
    ['nothing', [], 0],
    ['a line', TRIANGLE.slice(0, 2), 0],
  ] as const)('%s', (_, outline, area) => {
    expect(areaOf(outline)).toBe(area);
    expect(areaOf([...outline].reverse())).toBe(area);
  });

  test('has a sign that tells which way the outline goes round', () => {
    expect(twiceAreaOf(ELL)).toBe(20);
    expect(twiceAreaOf([...ELL].reverse())).toBe(-20);
  });

  test('is as exact far from the origin', () => {
    const far = ELL.map(([x, y]): Point2 => [x + 2 ** 30, y - 2 ** 31]);
    expect(areaOf(far)).toBe(10);
  });
});

test('the hypotenuse over 3 and 4 is 5, whatever the elevations', () => {
  expect(apart(inPlan([0, 0, 12]), inPlan([3, 4, -2]))).toBe(5);
});
