import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PENS } from '../../../../../calc/sheets/pdf/kit/ink.ts';
import { Operators, placeWords, thousandths } from '../../../../../calc/sheets/pdf/kit/operators.ts';
import { penWith } from '../../../../../calc/sheets/pdf/kit/pen.ts';
import { plainLettering } from './plain-lettering.ts';

const pen = () => penWith(plainLettering());

describe('pen', () => {
  test('line weights are millimeters: 0.5 mm is 1.417 points', () => {
    const one = pen();
    one.line(
      [
        [0, 0],
        [10, 0],
      ],
      PENS.heavy,
    );
    expect(one.content()).toContain('1.417 w');
  });
  test('what a clipped part sets does not leak out of it', () => {
    const one = pen();
    const line = (): void =>
      one.line(
        [
          [0, 0],
          [1, 1],
        ],
        PENS.thin,
      );
    one.clipped({ x: 0, y: 0, width: 9, height: 9 }, line);
    line();
    // Each has to say its weight: the state goes back at the end of the clip.
    expect(one.content().match(/0\.51 w/g)).toHaveLength(2);
  });
  test('a text that is anchored in the middle stands half its width to the left, turned too', () => {
    const one = pen();
    // Ten signs at size 10 are 50 points wide in this lettering.
    one.text('0123456789', [100, 100], { size: 10, anchor: 'middle' });
    one.text('0123456789', [100, 100], { size: 10, anchor: 'right', turn: 90 });
    expect(one.content()).toContain('1 0 0 1 75 100 Tm');
    expect(one.content()).toContain('0 1 -1 0 100 50 Tm');
  });
  test('a place that is no number is a fault of the program', () => {
    expect(() =>
      pen().line(
        [
          [0, 0],
          [Number.NaN, 1],
        ],
        PENS.thin,
      ),
    ).toThrow(RangeError);
  });
  test('numbers are written plainly, without exponents', () => {
    const one = pen();
    one.line(
      [
        [1e-9, 123456.789123],
        [-0.0001, 2],
      ],
      PENS.thin,
    );
    expect(one.content()).toContain('0 123456.789 m 0 2 l');
  });
  test('thousandths are those that the language rounds to, next to the middle of two as well', () => {
    const plainly = (value: number): string =>
      value
        .toFixed(3)
        .replace(/\.?0+$/, '')
        .replace(/^-0$/, '0');
    const near = fc.tuple(fc.integer({ min: -4e6, max: 4e6 }), fc.integer({ min: -3, max: 3 }));
    fc.assert(
      fc.property(fc.double({ min: -4e3, max: 4e3, noNaN: true }), near, (value, [step, off]) => {
        const middle = (step + 0.5) / 1000;
        const beside = middle + off * Math.abs(middle) * Number.EPSILON;
        for (const one of [value, step / 1000, middle, beside, 1e7 * value, step, -0, 10 ** (step % 9)]) {
          expect(thousandths(one)).toBe(plainly(one));
          const out = new Operators();
          out.number(one);
          expect(new TextDecoder().decode(out.bytes())).toBe(placeWords(one));
        }
      }),
    );
  });
});
