import { expect, test } from 'vitest';
import { counted } from '../../../routing/words/counted.ts';

test.each([
  [0, '0 trays'],
  [1, '1 tray'],
  [2, '2 trays'],
])('%i of a noun is %s', (count, words) => {
  expect(counted(count, 'tray')).toBe(words);
});

test('a plural of its own is given', () => {
  expect(counted(1, 'quantity', 'quantities')).toBe('1 quantity');
  expect(counted(3, 'quantity', 'quantities')).toBe('3 quantities');
});
