import { expect, test } from 'vitest';
import { gridlineWords, planWords } from '../../../../routing/site/place/gridline-words.ts';

const LINES = {
  x: [
    { label: '1', at: 0 },
    { label: '2', at: 27 },
  ],
  y: [{ label: 'A', at: 10 }],
};
const NONE = { x: [], y: [] };

test('a place is told from the nearest lines, and above or below grade', () => {
  expect(gridlineWords([31.5, 9, 11], LINES, 'ft')).toBe(`4' 6" past line 2, 1' 0" before line A, 11' 0" above grade`);
  expect(gridlineWords([27, 10, -2], LINES, 'ft')).toBe(`on line 2, on line A, 2' 0" below grade`);
});

test('without lines it is told by its coordinates', () => {
  expect(gridlineWords([31.5, -9, 0], NONE, 'ft')).toBe(`x 31' 6", y -9' 0", at grade`);
});

test('a metric site reads metres', () => {
  expect(gridlineWords([31.5, 10, 10], LINES, 'm')).toMatch(
    /^1\.37\d* m past line 2, on line A, 3\.048 m above grade$/,
  );
});

test('a place of the plan is told without its height, in lengths as they are wished for', () => {
  const feet = (length: number): string => `${Math.round(length)} ft`;
  expect(planWords([31.4, 8.9], LINES, 'ft', feet)).toBe('4 ft past line 2, 1 ft before line A');
  const turned = { ...LINES, rotation: 90, origin: [100, 0] as const };
  // A quarter turn: 10 ft up the sheet is 10 ft along their x, and 5 ft to the left of the origin 5 ft along their y.
  expect(planWords([95, 10], turned, 'ft', feet)).toBe('10 ft past line 1, 5 ft before line A');
});
