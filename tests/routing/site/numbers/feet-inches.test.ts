import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { parseLength } from '../../../../routing/site/numbers/parse-length.ts';
import { UNITS } from '../../../../routing/site/schema/vocabulary.ts';
import { feetOf } from './feet-inches-parts.ts';

describe('a typed length', () => {
  test.each([
    [`12' 6 1/2"`, 12 + 6.5 / 12],
    [`12'-6 1/2"`, 12 + 6.5 / 12],
    [`12'-6-1/2"`, 12 + 6.5 / 12],
    [`12'6-1/2"`, 12 + 6.5 / 12],
    ['12-6', 12.5],
    ['12-6"', 12.5],
    ['12-6 1/2', 12 + 6.5 / 12],
    ['12-6-1/2', 12 + 6.5 / 12],
    ['12-0', 12],
    ['0-6', 0.5],
    [`12' 6`, 12.5],
    [`12'6`, 12.5],
    [`12'-6`, 12.5],
    [`12' 6.5`, 12 + 6.5 / 12],
    [`12' 1/2"`, 12 + 0.5 / 12],
    ['12.5', 12.5],
    ['12', 12],
    ['.5', 0.5],
    ['5.', 5],
    ['6 1/2', 6.5],
    ['1/2', 0.5],
    [`12.5'`, 12.5],
    [`6 1/2'`, 6.5],
    ['150"', 12.5],
    ['6 1/2"', 6.5 / 12],
    ['6-1/2"', 6.5 / 12],
    ['12-1/2"', 12.5 / 12],
    ['1/2"', 0.5 / 12],
    ["6''", 0.5],
    ["12'6''", 12.5],
    ['12ft 6in', 12.5],
    ['12 ft. 6 in.', 12.5],
    ['12 FEET 6 Inches', 12.5],
    ['1 foot', 1],
    ['3.81 m', 12.5],
    ['3.81m', 12.5],
    ['381cm', 12.5],
    ['3810 mm', 12.5],
    ['3,810', '1: commas are not read: write 1250, and 3.8 with a point'],
    ['  12.5  ', 12.5],
    ['\u00a012.5\u2009\u2032', 12.5],
    ['12\u2032 6\u00bd\u2033', 12 + 6.5 / 12],
    ['12\u2019 6 \u00bc\u201d', 12 + 6.25 / 12],
    ['\u00be"', 0.75 / 12],
    ['12\u20136', 12.5],
    ['6 1\u20442"', 6.5 / 12],
    ['-4', -4],
    [`-4' 6"`, -4.5],
    ['\u22124-6', -4.5],
    ['- 4', -4],
    ['+4', 4],
  ])('%s is %s', (text, expected) => {
    const got = feetOf(text);
    if (typeof expected === 'number') expect(got).toBeCloseTo(expected, 12);
    else expect(got).toBe(expected);
  });

  test.each([
    ['3.8', 3.8 / 0.3048],
    ['3.8m', 3.8 / 0.3048],
    ['381 cm', 12.5],
    [`12' 6"`, 12.5],
    [`12'-6`, 12.5],
    ['4 - 1', 3 / 0.3048],
    [`1 + 1'`, 1 / 0.3048 + 1],
    ['2 * 1.5', 3 / 0.3048],
  ])('in a metric file: %s is %s ft', (text, expected) => {
    expect(feetOf(text, 'm')).toBeCloseTo(expected, 12);
  });

  it('0 is 0, whatever its sign', () => {
    expect(Object.is(feetOf('-0'), 0)).toBe(true);
  });
});

describe('arithmetic in a typed length', () => {
  test.each([
    [`9' * 3`, 27],
    [`3 * 9'`, 27],
    [`3x9'`, 27],
    [`3 \u00d7 9'`, 27],
    ['9 * 9', 81],
    [`12' 6 + 3"`, 12.75],
    ['12 - 6', 6],
    [`12' - 6"`, 11.5],
    ['12.5-6', 6.5],
    [`12'6"-3"`, 12.25],
    [`(12' 6 + 3") / 2`, 6.375],
    [`3 + 2 * 4'`, 11],
    [`(1 + 2) * 9'`, 27],
    [`9' * 1/2`, 4.5],
    [`9' * 2 / 3`, 6],
    ['12 / 4 / 3', 1],
    [`24' / 1 1/2`, 16],
    [`24'/2`, 12],
    [`-(3' + 1')`, -4],
    [`10' - -2'`, 12],
    [`3*12-6`, 37.5],
    ['20 - 5 - 5', 10],
    ['2.7m * 3 + 1 ft', 8.1 / 0.3048 + 1],
  ])('%s is %s', (text, expected) => {
    expect(feetOf(text)).toBeCloseTo(expected, 12);
  });

  test.each([
    ['', 0, /a length such as/],
    ['   ', 3, /a length such as/],
    ['north', 0, /"n" is not read/],
    ['12 m2', 4, /"2" is not read|"m" is not read/],
    ["9' * 9'", 3, /a length times a length is no length/],
    [`27' / 9'`, 4, /divided by a number, not by a length/],
    ['9 / 0', 2, /a number other than 0/],
    ['9/0', 0, /a fraction over 0/],
    ['1/0"', 0, /a fraction over 0/],
    [`12'/1/2`, 3, /brackets/],
    [`12' 6/2`, 4, /brackets/],
    ['12 6', 2, /write feet and inches/],
    ['6-1/2', 0, /write feet and inches/],
    ['12 -6', 3, /a space on both sides of a minus/],
    ['12- 6', 2, /a space on both sides of a minus/],
    [`12' -6"`, 4, /a space on both sides of a minus/],
    ['12-6-3', 4, /a space on both sides of a minus/],
    ['12-18', 3, /inches below 12.*a space on both sides of a minus/],
    [`12' 65`, 4, /inches below 12/],
    [`12'-6'`, 4, /inches after the feet/],
    [`12.5' 6"`, 6, /feet before inches are a whole number/],
    ['6 3/2"', 0, /a fraction below 1/],
    ['(12', 0, /not closed/],
    ['12)', 2, /"\)" is not read/],
    ['12 +', 4, /a length such as/],
    ['* 3', 0, /"\*" is not read/],
    ['1e3', 1, /"e" is not read/],
    ['\u{1f697}', 0, /"\u{1f697}" is not read/u],
    ['100001', 0, /at most 100,000 ft/],
    ['99999999999 * 99999999999', 0, /at most 100,000 ft/],
    [`${'('.repeat(201)}`, 200, /at most 200 characters/],
  ])('%s is refused at character %d: %s', (text, at, says) => {
    const read = parseLength(text, 'ft');
    expect(read).toMatchObject({ ok: false, at });
    expect(!read.ok && read.says).toMatch(says);
  });

  it('refuses 12-6 in a metric file, where it could be a subtraction', () => {
    expect(feetOf('12-6', 'm')).toMatch(/write feet and inches as 12' 6.*a space on both sides/);
  });

  it('never throws or hangs, and gives a length or a place in the text, whatever is typed', () => {
    const piece = fc.constantFrom(
      ...`0123456789.'"-+*/()x ½,`,
      '1/2',
      "12'",
      ' - ',
      '6"',
      'm',
      'mm',
      'ft',
      'in',
      '\u2032',
      '9'.repeat(40),
    );
    const typed = fc.oneof(
      fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join('')),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom(...UNITS), (text, units) => {
        const read = parseLength(text, units);
        if (read.ok) expect(Math.abs(read.feet)).toBeLessThanOrEqual(100_000);
        else {
          expect(read.says).not.toBe('');
          expect(read.at).toBeGreaterThanOrEqual(0);
          expect(read.at).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 5000 },
    );
  });
});
