import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { parseNumber } from '../../../../routing/site/numbers/parse-number.ts';

const numberOf = (text: string, unit = 'A'): number | string => {
  const read = parseNumber(text, unit);
  return read.ok ? read.value : `${read.at}: ${read.says}`;
};

describe('a typed number', () => {
  test.each([
    ['80', 80],
    ['80 A', 80],
    ['80a', 80],
    ['80 amps', 80],
    ['2*40', 80],
    ['2 x 40 A', 80],
    ['(100 + 25) * 1.25 A', 156.25],
    ['(50 + 30) A / 2', 40],
    ['100 A + 25', 125],
    ['100/4/5', 5],
    ['100 / (4/5)', 125],
    ['12.5', 12.5],
    ['.5', 0.5],
    ['6 1/2', 6.5],
    ['6-1/2', 5.5],
    ['6\u00bd * 2', 13],
    ['12-6', 6],
    ['12 -6', 6],
    ['3 - -2', 5],
    ['\u22124', -4],
    ['1e3', 1000],
    ['-0', 0],
  ])('%s is %s', (text, expected) => {
    const got = numberOf(text);
    expect(got).toBe(expected);
    expect(Object.is(got, -0)).toBe(false);
  });

  test.each([
    ['30°', 'degrees', 30],
    ['30 deg', 'degrees', 30],
    ['-90 degrees / 2', 'degrees', -45],
    ['5.75 %', '%', 5.75],
    ['112.5kVA', 'kVA', 112.5],
    ['25 pF/ft * 2', 'pF/ft', 50],
    ['35 °C', 'C', 35],
    ['35 c', '°C', 35],
    ['3 * 8', '', 24],
  ])('%s in %s is %s', (text, unit, expected) => {
    expect(numberOf(text, unit)).toBe(expected);
  });

  test.each([
    ['', '0: a number such as 12 A'],
    ['north', '0: "n" is not read: a number such as 12 A'],
    ['80 V', '3: "V" is not read: a number such as 12 A'],
    ['80 2', '3: "2" is not read: a number such as 12 A'],
    ['1,250', '1: commas are not read: write 1250, and 3.8 with a point'],
    ['2 A * 40 A', '4: only one of two that are multiplied is in A'],
    ['80 / 2 A', '3: the number to divide by is not in A'],
    ['80 / (4 - 4)', '3: a number other than 0 to divide by'],
    ['(2 * 40', '0: this bracket is not closed'],
    ['2 *', '3: a number such as 12 A'],
    ['6 3/2', '0: a fraction below 1, such as 6 1/2'],
    ['99999 * 99999', '0: a number of at most 1,000,000,000'],
    ['1e999', '0: a number of at most 1,000,000,000'],
    ['2^3', '1: "^" is not read: a number such as 12 A'],
    [`${'('.repeat(201)}`, '200: at most 200 characters'],
  ])('%s is refused: %s', (text, says) => {
    expect(numberOf(text)).toBe(says);
  });

  const literal = fc.oneof(
    fc.integer({ min: 0, max: 999 }).map(String),
    fc.integer({ min: 0, max: 99_999 }).map((n) => (n / 100).toFixed(2)),
  );
  const gap = fc.constantFrom('', ' ', '  ');
  const inJavaScript = (text: string): number => runInNewContext(text);
  /** A text, and whether anything in it is divided by 0: `0/(1/0)` is 0 in JavaScript, and a mistake here. */
  interface Typed {
    readonly text: string;
    readonly byZero: boolean;
  }
  const { sum } = fc.letrec<{ sum: Typed; one: Typed }>((tie) => ({
    one: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      literal.map((text) => ({ text, byZero: false })),
      tie('sum').map(({ text, byZero }) => ({ text: `(${text})`, byZero })),
      tie('one').map(({ text, byZero }) => ({ text: `(-${text})`, byZero })),
    ),
    sum: fc
      .tuple(
        tie('one'),
        fc.array(fc.tuple(gap, fc.constantFrom('+', '-', '*', '/'), gap, tie('one')), { maxLength: 4 }),
      )
      .map(([first, rest]) => ({
        text: first.text + rest.map(([before, sign, after, { text }]) => before + sign + after + text).join(''),
        byZero:
          first.byZero ||
          rest.some(([, sign, , { text, byZero }]) => byZero || (sign === '/' && inJavaScript(text) === 0)),
      })),
  }));

  it('comes to what JavaScript makes of the same text, and refuses to divide by 0 anywhere in it', () => {
    let told = 0;
    fc.assert(
      fc.property(sum, ({ text, byZero }) => {
        fc.pre(text.length <= 200);
        const got = numberOf(text, '');
        const meant = inJavaScript(text);
        if (byZero) expect(got).toMatch(/other than 0 to divide by/);
        else if (Math.abs(meant) > 1e9) expect(got).toMatch(/at most 1,000,000,000/);
        else {
          told++;
          expect(got).toBe(meant + 0);
        }
      }),
      { numRuns: 2000 },
    );
    expect(told).toBeGreaterThan(1000);
  });

  it('never throws, whatever is typed', () => {
    const piece = fc.constantFrom(...'0123456789.-+*/()x ½,%°AeE', '1/2', ' - ', '9'.repeat(40));
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), fc.constantFrom('', 'A', '%', 'degrees'), (pieces, unit) => {
        const text = pieces.join('');
        const read = parseNumber(text, unit);
        if (read.ok) expect(Math.abs(read.value)).toBeLessThanOrEqual(1e9);
        else {
          expect(read.says).not.toBe('');
          expect(read.at).toBeGreaterThanOrEqual(0);
          expect(read.at).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 3000 },
    );
  });
});
