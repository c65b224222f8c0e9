import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printable } from '../../../../../calc/sheets/pdf/kit/lettering/printable.ts';

/** A typeface of Latin letters, as the one of the sheets is. */
const latin = (code: number): boolean => code >= 0x20 && code <= 0x17f;
const shown = (text: string): string => printable(text, latin);

test('what the typeface has stays as it is', () => {
  expect(shown('Éclair Straße 2')).toBe('Éclair Straße 2');
});

test('full-width letters, ligatures and figures in rings are written plainly, the rest by their numbers', () => {
  expect(shown('ＬＯＴ ①')).toBe('LOT 1');
  expect(shown('oﬃce')).toBe('office');
  expect(shown('充电 2')).toBe('[U+5145 U+7535] 2');
  expect(shown('⚡️ lot')).toBe('[U+26A1] lot');
  // A family of three is three people and what joins them.
  expect(shown('👩‍👧‍👦')).toBe('[U+1F469 U+1F467 U+1F466]');
});

test('any text comes out in signs of the typeface, and two names that differ only in what it lacks still differ', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 12 }), (text) => {
      for (const letter of shown(text)) expect(latin(letter.codePointAt(0)!) || /\p{Zs}/u.test(letter)).toBe(true);
    }),
  );
  expect(shown('充')).not.toBe(shown('电'));
});
