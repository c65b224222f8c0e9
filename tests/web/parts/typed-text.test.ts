import { expect, test } from 'vitest';
import { readNumber } from '../../../web/parts/read-number.ts';
import { typedLetters, typedText } from '../../../web/parts/typed-text.ts';

test('what is typed is no number and no text to the compiler until it is read', () => {
  const typed = typedText('2*40 A');
  const takesNumber = (value: number): number => value;
  // @ts-expect-error: NaN
  takesNumber(Number(typed));
  // @ts-expect-error: 2
  Number.parseFloat(typed);
  // @ts-expect-error: 2
  Number.parseInt(typed, 10);
  // @ts-expect-error: it may be a number with its unit
  const text: string = typed;
  expect(text).toBe(typedLetters(typed));
  expect(readNumber(typed, { unit: 'A' })).toEqual({ ok: true, value: 80 });
});
