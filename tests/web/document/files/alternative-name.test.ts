import { expect, test } from 'vitest';
import { alternativeName } from '../../../../web/document/files/alternative-name.ts';
import { siteLabels } from '../../../../web/words/site-labels.ts';

test('an alternative never has the name of another, wherever it is branched from', () => {
  const taken = ['Lot'];
  for (const from of ['Lot', 'Lot', 'Lot, alternative 2', 'Lot', 'Lot, alternative 3'])
    taken.push(alternativeName(from, taken));
  expect(taken).toEqual(['Lot', ...[2, 3, 4, 5, 6].map((number) => `Lot, alternative ${number}`)]);
});

test('two sites of one name are told apart by when they were written, or by a number', () => {
  const noon = new Date(2026, 10, 29, 12, 0).getTime();
  const hour = 3_600_000;
  const sites = [
    { doc: 'a', name: 'Lot', at: noon },
    { doc: 'b', name: 'Lot', at: noon - hour },
    { doc: 'c', name: 'Lot', at: noon },
    { doc: 'd', name: 'Yard', at: noon },
    { doc: 'e', name: 'Lot', at: 0 },
  ];
  const labels = [...siteLabels(sites, noon).values()].map((label) => label.replace(/\s/g, ' '));
  expect(labels).toEqual([
    'Lot, Nov 29, 12:00 PM',
    'Lot, Nov 29, 11:00 AM',
    'Lot, Nov 29, 12:00 PM (2)',
    'Yard',
    'Lot, date not known',
  ]);
});
