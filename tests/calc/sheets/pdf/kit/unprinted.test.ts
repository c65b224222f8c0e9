import { expect, test } from 'vitest';
import { unprintedWords } from '../../../../../calc/sheets/pdf/kit/lettering/unprinted.ts';
import { isDrawn } from '../../../../../calc/sheets/pdf/kit/scripts/signs.ts';

test('what cannot be printed names its field, its element and its signs', () => {
  const site = {
    name: 'Lot \u{1f697}',
    project: { client: 'Owner \u{1f469}\u200d\u{1f527}', address: 'Σταθμός 充电 हिन्दी ① ㎡' },
    stalls: [{ id: 'S01' }, { id: 'S02', label: 'A\u{1f6fb}\ufe0f' }],
    drawings: { notes: ['fine', 'ends \u{1f3c1}'] },
  };
  expect(unprintedWords(site, isDrawn)).toEqual([
    'The name of the site has \u{1f697}, which no typeface of the sheets has: it is printed as [U+1F697].',
    'The client in project has \u{1f469} \u{1f527}, which no typeface of the sheets has: they are printed as [U+1F469] [U+1F527].',
    'The label of S02 (stalls) has \u{1f6fb}, which no typeface of the sheets has: it is printed as [U+1F6FB].',
    'The line 2 of notes in drawings has \u{1f3c1}, which no typeface of the sheets has: it is printed as [U+1F3C1].',
  ]);
});

test('of very many places the first are told, and how many more', () => {
  const stalls = Array.from({ length: 30 }, (_, i) => ({ id: `S${i}`, label: '\u{1f697}' }));
  const told = unprintedWords({ stalls }, isDrawn);
  expect(told).toHaveLength(9);
  expect(told.at(-1)).toBe('So in 22 more places.');
});
