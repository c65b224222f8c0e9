import { describe, expect, test } from 'vitest';
import { direction } from '../../../routing/plane/direction.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';

describe('a direction', () => {
  test('is exact at quarter turns, whichever way round they are given', () => {
    expect(direction(90)).toEqual([0, 1]);
    expect(direction(-90)).toEqual([0, -1]);
    expect(direction(540)).toEqual([-1, 0]);
    expect(direction(360)).toEqual([1, 0]);
  });

  test('turns counter-clockwise from +x', () => {
    const [x, y] = direction(30);
    expect(x).toBeCloseTo(Math.sqrt(3) / 2, 15);
    expect(y).toBeCloseTo(0.5, 15);
  });
});

test('a rectangle lists its corners counter-clockwise about its middle, turned', () => {
  expect(rectangleAt([10, 20], [4, 2], 0)).toEqual([
    [8, 19],
    [12, 19],
    [12, 21],
    [8, 21],
  ]);
  expect(rectangleAt([10, 20], [4, 2], 90)).toEqual([
    [11, 18],
    [11, 22],
    [9, 22],
    [9, 18],
  ]);
});
