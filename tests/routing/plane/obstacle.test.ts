import { describe, expect, test } from 'vitest';
import { enters, insideOf, obstacleOf, spansInside } from '../../../routing/plane/obstacle.ts';
import { partAlong, partsInside, pointAlong } from '../../../routing/reach/cords/plan-path.ts';
import type { Point2 } from '../../../routing/site/site.ts';

const square: Point2[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const notch: Point2[] = [
  [0, 0],
  [9, 0],
  [9, 6],
  [6, 6],
  [6, 2],
  [3, 2],
  [3, 6],
  [0, 6],
];

describe('an obstacle', () => {
  test('is the same whichever way round its outline is given, with points repeated or not', () => {
    const again = obstacleOf([square[0]!, square[0]!, ...square.toReversed()]);
    expect([again.count, again.convex]).toEqual([4, true]);
    expect(enters(again, -1, 2, 5, 2)).toBe(true);
  });

  test('knows its corners that a cord bends at: not those of a notch, not a pentagram as convex', () => {
    expect([...obstacleOf(notch).bends]).toEqual([1, 1, 1, 1, 0, 0, 1, 1]);
    const star = Array.from(
      { length: 5 },
      (_, k): Point2 => [Math.cos(0.8 * k * Math.PI), Math.sin(0.8 * k * Math.PI)],
    );
    expect(obstacleOf(star).convex).toBe(false);
  });

  test('is entered by what passes its inside, not by what follows its outline or touches a corner', () => {
    for (const outline of [square, square.toReversed()]) {
      const o = obstacleOf(outline);
      expect(enters(o, 0, 0, 4, 4)).toBe(true);
      expect(enters(o, 1, 1, 2, 2)).toBe(true);
      expect(enters(o, 0, 0, 4, 0)).toBe(false);
      expect(enters(o, -2, 2, 2, -2)).toBe(false);
      expect(enters(o, 0, 2, -3, 2)).toBe(false);
      expect(enters(o, 4, 1, 4, 9)).toBe(false);
    }
  });

  test('that is not convex lets a cord into its notch', () => {
    const o = obstacleOf(notch);
    expect(enters(o, 4.5, 9, 4.5, 2)).toBe(false);
    expect(enters(o, 3, 6, 6, 6)).toBe(false);
    expect(enters(o, 3, 6, 6, 1.9)).toBe(true);
    expect(enters(o, 1, 5, 8, 5)).toBe(true);
    expect(spansInside(o, -1, 4, 10, 4).map(([a, b]) => [a * 11 - 1, b * 11 - 1])).toEqual([
      [expect.closeTo(0, 12), expect.closeTo(3, 12)],
      [expect.closeTo(6, 12), expect.closeTo(9, 12)],
    ]);
  });

  test('holds a point inside, not one on its outline', () => {
    for (const o of [obstacleOf(square), obstacleOf(notch)]) {
      expect(insideOf(o, 1, 1)).toBe(true);
      expect(insideOf(o, 0, 1)).toBe(false);
      expect(insideOf(o, 2, 0)).toBe(false);
      expect(insideOf(o, -1, 1)).toBe(false);
    }
    expect(insideOf(obstacleOf(notch), 4.5, 4)).toBe(false);
  });

  test('of no area is entered by nothing', () => {
    const line: Point2[] = [
      [0, 0],
      [5, 5],
      [0, 0],
    ];
    expect(enters(obstacleOf(line), 0, 5, 5, 0)).toBe(false);
    expect(enters(obstacleOf([[1, 1]]), 0, 0, 2, 2)).toBe(false);
  });
});

describe('a path', () => {
  const path: Point2[] = [
    [0, 0],
    [3, 4],
    [3, 10],
  ];

  test('has its points at distances along it, and parts with the corners between', () => {
    expect(pointAlong(path, 5)).toEqual([3, 4]);
    expect(pointAlong(path, 8)).toEqual([3, 7]);
    expect(pointAlong(path, -1)).toEqual([0, 0]);
    expect(pointAlong(path, 99)).toEqual([3, 10]);
    expect(partAlong(path, 2.5, 7)).toEqual([
      [1.5, 2],
      [3, 4],
      [3, 6],
    ]);
  });

  test('is inside a polygon between the distances at which it crosses the outline', () => {
    const strip = obstacleOf([
      [-9, 2],
      [9, 2],
      [9, 6],
      [-9, 6],
    ]);
    expect(partsInside(path, strip)).toEqual([
      [2.5, 5],
      [5, 7],
    ]);
  });
});
