import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ByteText } from '../../../calc/sheets/byte-text.ts';

const written = (write: (text: ByteText) => void): string => {
  const text = new ByteText();
  write(text);
  return text.text();
};

/** What the language itself makes of a number to a billionth. */
const byLanguage = (value: number): string => String(Math.round(value * 1e9) / 1e9);

describe('a text that is written into bytes', () => {
  test('reads as it was written, whatever its signs, and after it grew', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 300 }), { maxLength: 20 }), (parts) => {
        const all = written((text) => {
          for (const part of parts) text.add(part);
        });
        expect(all).toBe(new TextDecoder().decode(new TextEncoder().encode(parts.join(''))).replace(/^\uFEFF/, ''));
      }),
    );
    const long = 'x'.repeat(5000);
    const grown = written((text) => {
      for (const part of ['a', long, 'é', long]) text.add(part);
    });
    expect(grown).toBe(`a${long}é${long}`);
  });

  test('has whole numbers as the language writes them', () => {
    fc.assert(
      fc.property(fc.oneof(fc.integer(), fc.maxSafeInteger()), (value) => {
        expect(written((text) => text.whole(value))).toBe(String(value));
      }),
    );
    expect(written((text) => text.whole(-0))).toBe('0');
  });

  test('has decimals to a billionth as the language writes them, or says that it has not', () => {
    const any = fc.oneof(
      fc.double(),
      fc.double({ min: -2e6, max: 2e6 }),
      fc.double({ min: -1e-5, max: 1e-5 }),
      fc.integer({ min: -1e9, max: 1e9 }).map((value) => value / 1000),
    );
    const decimalOf = (value: number): string | null => {
      let isWritten = false;
      const words = written((text) => {
        isWritten = text.decimal(value, '.0');
      });
      if (!isWritten) expect(words).toBe('');
      return isWritten ? words : null;
    };
    fc.assert(
      fc.property(any, (value) => {
        const words = decimalOf(value);
        const language = byLanguage(value);
        if (words !== null) expect(words).toBe(language.includes('.') ? language : `${language}.0`);
        else expect(Math.abs(value) >= 1e6 || language.includes('e') || !Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 2000 },
    );
    expect([0, -0, 1.5, -0.000001, 999_999.999_999_999, 20].map(decimalOf)).toEqual([
      '0.0',
      '0.0',
      '1.5',
      '-0.000001',
      '999999.999999999',
      '20.0',
    ]);
    expect([1e6, 4e-7, Number.NaN].map(decimalOf)).toEqual([null, null, null]);
  });

  test('takes another in, and takes back its end', () => {
    const other = new ByteText();
    other.add('and more');
    const all = written((text) => {
      text.add('one ');
      text.addAll(other);
      text.takeBack(5);
    });
    expect(all).toBe('one and');
  });

  test('takes a long one in as it lies: what either is given or gives back afterwards changes nothing of the other', () => {
    const other = new ByteText();
    const long = 'abcdefgh'.repeat(2000);
    other.add(long);
    const text = new ByteText();
    text.add('head ');
    text.addAll(other);
    other.takeBack(4);
    other.add('WXYZ!');
    text.takeBack(3 + 8);
    text.add('foot');
    expect(text.length).toBe(5 + long.length - 11 + 4);
    expect(text.text()).toBe(`head ${long.slice(0, -11)}foot`);
    expect(other.text()).toBe(`${long.slice(0, -4)}WXYZ!`);
  });

  test('gives back an end that lies in several pieces, and goes on behind it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 3000 }), { minLength: 1, maxLength: 12 }),
        fc.nat(),
        (sizes, some) => {
          const whole = sizes.map((size, i) => String.fromCharCode(97 + i).repeat(size)).join('');
          const back = some % (whole.length + 1);
          const text = new ByteText();
          for (const [i, size] of sizes.entries()) text.add(String.fromCharCode(97 + i).repeat(size));
          text.takeBack(back);
          text.add('end');
          expect(text.text()).toBe(`${whole.slice(0, whole.length - back)}end`);
          expect(text.bytes.length).toBe(text.length);
        },
      ),
    );
  });

  test('is given out in as many bytes as it has, and what was given out stays as it was while it grows', () => {
    const text = new ByteText();
    text.add('x'.repeat(3_000_000));
    const one = text.bytes;
    text.add('y');
    text.add('z'.repeat(3_000_000));
    expect(text.length).toBe(6_000_001);
    expect(one.length).toBe(3_000_000);
    // As long as what it holds, and copied once, when all is asked for.
    expect(one.buffer.byteLength).toBe(3_000_000);
    expect(text.bytes.buffer.byteLength).toBe(6_000_001);
  });
});
