import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inert } from '../../../../../calc/sheets/pdf/kit/lettering/inert.ts';
import { shortened, wrapped } from '../../../../../calc/sheets/pdf/kit/lettering/lines-of-text.ts';
import { plainLettering } from './plain-lettering.ts';

const lettering = plainLettering();
const text = fc.string({ unit: fc.constantFrom('a', 'b', 'é', ' ', '-', 'W', '½'), maxLength: 120 });
const width = fc.double({ min: 12, max: 300, noNaN: true });

describe('text in lines', () => {
  test('no line is wider than its room, and no sign but white space is lost', () => {
    fc.assert(
      fc.property(text, width, (words, room) => {
        const lines = wrapped(words, room, 10, lettering);
        for (const line of lines) expect(lettering.width(line, 10)).toBeLessThanOrEqual(room + 1e-9);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.replaceAll(' ', ''));
      }),
    );
  });
  test('past the most lines the last one ends in an ellipsis and still fits', () => {
    const lines = wrapped('one two three four five six seven', 40, 10, lettering, { most: 2 });
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/…$/);
    expect(lettering.width(lines[1]!, 10)).toBeLessThanOrEqual(40);
  });
  test('a text that fits is left as it is, another is its beginning and an ellipsis', () => {
    fc.assert(
      fc.property(text, width, (words, room) => {
        const short = shortened(words, room, 10, lettering);
        if (lettering.width(words, 10) <= room) expect(short).toBe(words);
        else {
          expect(lettering.width(short, 10)).toBeLessThanOrEqual(room + 1e-9);
          expect(words.startsWith(short.slice(0, -1))).toBe(true);
        }
      }),
    );
  });
});

describe('text as a sheet prints it', () => {
  test.each([
    ['line\nbreak\r\n0', 'line break 0'],
    ['a\u0000b\u001bc', 'a b c'],
    ['abc\u202egnp.exe', 'abcgnp.exe'],
    ['\u2066x\u2069\u200by\u00ad', 'xy'],
    ['half \ud800 pair', 'half \ufffd pair'],
    ['e\u0301', 'é'],
    ['<b>&amp;</b> (Tj) \\n', '<b>&amp;</b> (Tj) \\n'],
    ['12′ 6″ ½ Ω ≤ 90°', '12′ 6″ ½ Ω ≤ 90°'],
  ])('%j is printed as %j', (given, printed) => {
    expect(inert(given)).toBe(printed);
  });
});
