import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { UNITS } from '../../../../routing/site/schema/vocabulary.ts';
import { feetOf } from './feet-inches-parts.ts';

describe('a printed length', () => {
  test.each([
    [12.5, `12' 6"`],
    [12 + 6.5 / 12, `12' 6 1/2"`],
    [12, `12' 0"`],
    [0, `0' 0"`],
    [0.5 / 12, `0' 0 1/2"`],
    [11.25 / 12, `0' 11 1/4"`],
    [3 / 16 / 12, `0' 0 3/16"`],
    [(11 + 15.99 / 16) / 12, `1' 0"`],
    [(11 + 15.4 / 16) / 12, `0' 11 15/16"`],
    [-4.5, `-4' 6"`],
    [-0.001, `0' 0"`],
    [99_999.999, `100000' 0"`],
    [Number.NaN, '\u2013'],
    [Number.POSITIVE_INFINITY, '\u2013'],
  ])('%d ft is %s', (feet, text) => {
    expect(printLength(feet, 'ft')).toBe(text);
  });

  test.each([
    [12.5, '3.81 m'],
    [1 / 0.3048, '1.00 m'],
    [3.8 / 0.3048, '3.80 m'],
    [3.8125 / 0.3048, '3.813 m'],
    [-1.2 / 0.3048, '-1.20 m'],
    [-0.0001, '0.00 m'],
    [30 / 0.3048, '30.00 m'],
  ])('%d ft is %s in a metric file', (feet, text) => {
    expect(printLength(feet, 'm')).toBe(text);
  });

  it('may be coarser', () => {
    expect(printLength(12 + 6.6 / 12, 'ft', { inchParts: 1, decimals: 1 })).toBe(`12' 7"`);
    expect(printLength(12 + 6.6 / 12, 'ft', { inchParts: 4, decimals: 1 })).toBe(`12' 6 1/2"`);
    expect(printLength(12.5, 'm', { inchParts: 1, decimals: 1 })).toBe('3.8 m');
  });

  const anyLength = fc.double({ min: -99_999, max: 99_999, noNaN: true });

  it('reads back within 1/32 in, in either system', () => {
    fc.assert(
      fc.property(anyLength, fc.constantFrom(...UNITS), fc.constantFrom(...UNITS), (feet, printed, read) => {
        const back = feetOf(printLength(feet, printed), read);
        expect(Math.abs(Number(back) - feet) * 12).toBeLessThanOrEqual(1 / 32 + 1e-6);
      }),
      { numRuns: 2000 },
    );
  });

  it('prints the same again when what was printed is read', () => {
    fc.assert(
      fc.property(anyLength, fc.constantFrom(...UNITS), (feet, units) => {
        const printed = printLength(feet, units);
        expect(printLength(Number(feetOf(printed, units)), units)).toBe(printed);
      }),
      { numRuns: 2000 },
    );
  });
});
