import { expect, test } from 'vitest';
import { unprintedWords } from '../../../../../calc/sheets/pdf/kit/lettering/unprinted.ts';
import { isDrawn, isDrawnBy } from '../../../../../calc/sheets/pdf/kit/scripts/signs.ts';

test('what cannot be printed names its field, its element and its signs', () => {
  const site = {
    name: 'Lot \u1780',
    project: {
      client: 'Owner \u12a0\u12f2',
      address: 'Σταθμός 充电 हिन्दी ① ㎡ \u{1f469}\u{1f3fd}\u200d\u{1f527} 1\ufe0f\u20e3 \u2713',
    },
    stalls: [{ id: 'S01' }, { id: 'S02', label: 'A\u{20bb7}' }],
    drawings: { notes: ['fine', 'ends \u1000'] },
  };
  expect(unprintedWords(site, isDrawn)).toEqual([
    'The name of the site has \u1780, which no typeface of the sheets has: it is printed as [U+1780].',
    'The client in project has \u12a0 \u12f2, which no typeface of the sheets has: they are printed as [U+12A0] [U+12F2].',
    'The label of S02 (stalls) has \u{20bb7}, which no typeface of the sheets has: it is printed as [U+20BB7].',
    'The line 2 of notes in drawings has \u1000, which no typeface of the sheets has: it is printed as [U+1000].',
  ]);
});

test('of elements of a list the first are named; of very many places the first are told, and how many more', () => {
  const stalls = Array.from({ length: 30 }, (_, i) => ({ id: `S${i}`, label: i === 7 ? '\u1000' : '\u1780' }));
  expect(unprintedWords({ stalls }, isDrawn)).toEqual([
    'The label of S0, S1, S2 and 27 more (stalls) has \u1780 \u1000, which no typeface of the sheets has: they are printed as [U+1780] [U+1000].',
  ]);
  const lines = Array.from({ length: 30 }, () => '\u1780');
  const told = unprintedWords({ drawings: { notes: lines } }, isDrawn);
  expect(told).toHaveLength(9);
  expect(told.at(-1)).toBe('So in 22 more places.');
});

test('where a typeface cannot be had its signs are told with why, and what helps; of many signs in one place some are shown', () => {
  const site = {
    name: 'Lot \uc8fc\ucc28',
    stalls: [{ id: 'S1', label: '\u1780' }],
    notes: [{ id: 'N1', text: '\uc8fc\u1780' }],
  };
  const told = unprintedWords(site, isDrawnBy(new Set(['korean'])), isDrawn);
  expect(told.slice(0, 3)).toEqual([
    'The name of the site has \uc8fc \ucc28, whose typeface has not come yet: they are printed as [U+C8FC] [U+CC28].',
    'The label of S1 (stalls) has \u1780, which no typeface of the sheets has: it is printed as [U+1780].',
    'The text of N1 (notes) has \uc8fc \u1780, of which some have no typeface and the others’ has not come yet: they are printed as [U+C8FC] [U+1780].',
  ]);
  expect(told[3]).toMatch(/^Typefaces of such signs are fetched .* once there is a network\.$/);
  const many = String.fromCodePoint(...Array.from({ length: 20 }, (_, i) => 0x1780 + i));
  expect(unprintedWords({ name: many }, isDrawn)[0]).toContain('[U+1784] [U+1785] and 14 more.');
});
