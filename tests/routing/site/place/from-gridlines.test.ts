import { expect, test } from 'vitest';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';

const lines = [
  { label: '1', at: 0 },
  { label: '2', at: 26 },
  { label: '3', at: 53 },
];

test.each([
  [4.5, '1', 4.5],
  [25, '2', -1],
  [26, '2', 0],
  [60, '3', 7],
  [-6, '1', -6],
] as const)('%d ft is measured from gridline %s by %d', (value, label, offset) => {
  expect(fromGridline(lines, value)).toEqual({ label, offset });
});

test('half way between two lines the one before is taken, whatever their order in the file', () => {
  expect(fromGridline(lines, 13)?.label).toBe('1');
  expect(fromGridline([...lines].reverse(), 13)?.label).toBe('1');
});

test('without gridlines there is nothing to measure from', () => {
  expect(fromGridline([], 3)).toBeNull();
});
