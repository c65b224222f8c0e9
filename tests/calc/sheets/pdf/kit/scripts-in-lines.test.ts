import { PDFDocument } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { packedFonts } from '../../../../../calc/cli/writing/fonts.ts';
import { inert } from '../../../../../calc/sheets/pdf/kit/lettering/inert.ts';
import { type Lettering, letteringIn } from '../../../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { shortened, wrapped } from '../../../../../calc/sheets/pdf/kit/lettering/lines-of-text.ts';
import { NAMES } from '../../../../scripts/names.ts';

let lettering: Lettering;
beforeAll(async () => {
  const doc = await PDFDocument.create({ updateMetadata: false });
  lettering = await letteringIn(doc, await packedFonts(), LETTERS.tabloid, Object.values(NAMES));
});

const words = fc.array(fc.constantFrom(...Object.values(NAMES).flatMap((name) => name.split(' ')), 'EV01', '32 A'), {
  minLength: 1,
  maxLength: 5,
});
const room = fc.double({ min: 24, max: 200, noNaN: true });

test('lines of any scripts are no wider than their room as they are set, and lose nothing', () => {
  fc.assert(
    fc.property(words, room, (given, width) => {
      const text = given.join(' ');
      const lines = wrapped(text, width, 8, lettering);
      for (const line of lines) expect(lettering.width(line, 8)).toBeLessThanOrEqual(width + 1e-9);
      expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      expect(lettering.width(shortened(text, width, 8, lettering), 8)).toBeLessThanOrEqual(width + 1e-9);
    }),
    { numRuns: 25 },
  );
});

test('letters that join are as wide as they are drawn, not as they would be one by one', () => {
  const apart = [...'\u0628\u0628\u0628\u0628'].reduce((sum, letter) => sum + lettering.width(letter, 10), 0);
  expect(lettering.width('\u0628\u0628\u0628\u0628', 10)).toBeLessThan(0.9 * apart);
});

test('the joiners of Arabic and Devanagari stay, those of signs that are not printed go', () => {
  expect(inert('\u0645\u06cc\u200c\u062e')).toBe('\u0645\u06cc\u200c\u062e');
  expect(inert('\u0915\u094d\u200d\u0937')).toBe('\u0915\u094d\u200d\u0937');
  expect(inert('a\u200cb \u200d')).toBe('ab ');
});
