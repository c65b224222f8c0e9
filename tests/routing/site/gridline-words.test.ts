import { expect, test } from 'vitest';
import { gridlineWords } from '../../../routing/site/gridline-words.ts';

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
