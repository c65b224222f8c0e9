import { expect, test } from 'vitest';
import { atLeast, readNumber } from '../../../web/parts/read-number.ts';
import { typedText } from '../../../web/parts/typed-text.ts';

test.each([
  ['2*40 A', { unit: 'A', over: 0 }, 80],
  ['0.1 + 0.2', { unit: '' }, 0.3],
  ['0', { unit: 'A', ...atLeast(0) }, 'more than 0 A'],
  ['2', { unit: '', ...atLeast(3) }, '3 or more'],
  ['3', { unit: '', ...atLeast(3) }, 3],
  ['10 / 4', { unit: '', whole: true }, 'a whole number, such as 12'],
  ['8 / 4', { unit: '', whole: true }, 2],
  ['90 * 5', { unit: 'degrees', most: 360 }, '360 degrees or less'],
  ['east', { unit: 'degrees' }, '"e" is not read: a number such as 12 degrees'],
])('%s within %o comes to %s', (text, limits, expected) => {
  const read = readNumber(typedText(text), limits);
  expect(read.ok ? read.value : read.says).toBe(expected);
});
