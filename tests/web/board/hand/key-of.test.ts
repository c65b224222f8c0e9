import { expect, test } from 'vitest';
import { keyOf } from '../../../../web/board/hand/key-of.ts';

test.each([
  ['f', false, 'f'],
  ['F', false, 'f'],
  ['F', true, 'F'],
  ['f', true, 'F'],
  ['?', true, '?'],
  ['Escape', false, 'Escape'],
])('%s, with Shift %s, is %s with and without Caps Lock', (key, shiftKey, expected) => {
  expect(keyOf({ key, shiftKey })).toBe(expected);
});
