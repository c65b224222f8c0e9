import { PDFString } from '@cantoo/pdf-lib';
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
    expect(one.content()).toContain('BT /F1 10 Tf 75 100 Td');
    expect(one.content()).toContain('0 1 -1 0 100 50 Tm');
  });
  test('a text goes on in the font of the one before, and says its own after a clip', () => {
    const one = pen();
    const write = (): void => one.text('ab', [1, 2], { size: 10 });
    write();
    write();
    one.text('ab', [1, 2], { size: 10, weight: 'bold' });
    one.clipped({ x: 0, y: 0, width: 9, height: 9 }, write);
    write();
    // The clip takes its font with it: what follows is bold still, until it says otherwise.
    expect(one.content().match(/\/F\d 10 Tf/g)).toEqual(['/F1 10 Tf', '/F2 10 Tf', '/F1 10 Tf', '/F1 10 Tf']);
  });
  test('signs by whatever numbers are the string of bytes that another program reads', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.constantFrom(10, 13, 40, 41, 92, 0x2829, 0x5c0d), fc.integer({ min: 1, max: 0xffff })), {
          minLength: 1,
          maxLength: 90,
        }),
        (numbers) => {
          const out = new Operators();
          const text = String.fromCharCode(...numbers.map((_, i) => 32 + i));
          const glyphs = new Uint16Array(128);
          numbers.forEach((number, i) => {
            glyphs[32 + i] = number;
          });
          expect(out.signs(text, glyphs)).toBe(true);
          const written = String.fromCharCode(...out.bytes());
          const read = PDFString.of(written.slice(1, -1)).asBytes();
          expect([...read]).toEqual(numbers.flatMap((number) => [number >> 8, number & 0xff]));
          // No bare end of a line that a reader would make another of, and brackets that close.
          expect(written).not.toContain('\r');
        },
      ),
    );
    expect(new Operators().signs('a', new Uint16Array(128))).toBe(false);
  });
  test('a sheet that is drawn where another was has nothing of it', () => {
    const out = new Operators();
    const shared = (): ReturnType<typeof pen> => penWith(plainLettering(), out);
    const draw = (one: ReturnType<typeof pen>): void => one.text('ab', [1, 2.5], { size: 10 });
    const first = shared();
    for (let i = 0; i < 2000; i++) draw(first);
    const second = shared();
    draw(second);
    const alone = pen();
    draw(alone);
    expect(second.content()).toBe(alone.content());
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
