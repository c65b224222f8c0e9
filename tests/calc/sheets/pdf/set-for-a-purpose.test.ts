import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawingsWished, withDrawings } from '../../../../calc/cli/writing/drawings.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { SET_PURPOSES } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drawings, Site } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';

function library(drawings: Drawings, project = {}): Site {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return toSite({ ...read.file, drawings, project });
}

const wordsOf = (sheets: readonly DrawnSheet[]): string =>
  sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');

/** Discipline designator, sheet type and sequence of the US National CAD Standard, in its order. */
const NUMBER = /^([GE])-([0-79])(\d\d)$/;

describe.each(SET_PURPOSES)('a set for %s', (purpose) => {
  test('has its own sheets, in the order of their numbers, and says what it is for', async () => {
    const sheets = await drawnSheets(library({ purpose }), 'ANSI D');
    const numbers = sheets.map(({ number }) => number);
    for (const number of numbers) expect(number).toMatch(NUMBER);
    expect(numbers).toEqual([
      ...numbers.filter((one) => one[0] === 'G'),
      ...numbers.filter((one) => one[0] === 'E').sort(),
    ]);
    expect(numbers[0]).toBe('G-001');
    const all = wordsOf(sheets);
    const title = {
      permit: 'PERMIT SET',
      bid: 'BID SET',
      construction: 'CONSTRUCTION SET',
      'as-built': 'AS-BUILT RECORD',
    };
    for (const sheet of sheets) expect(wordsOf([sheet])).toContain(title[purpose]);
    expect(all.includes('TAKEOFF')).toBe(purpose === 'bid');
    expect(all.includes('NOT FOR CONSTRUCTION')).toBe(purpose !== 'as-built');
    // What is to be confirmed stands on a page of its own, away from the cover.
    expect(wordsOf(sheets.slice(0, 1))).not.toContain('ASSUMPTIONS TO BE CONFIRMED');
    expect(all.includes('ASSUMPTIONS TO BE CONFIRMED')).toBe(purpose !== 'as-built');
    for (const word of ['Seal', 'Signature', 'SCOPE OF WORK', 'CODES']) expect(all).toContain(word);
  });
});

test('parts, scale, areas, scope and notes are as the site keeps them, and nothing is invented where it says nothing', async () => {
  const drawings: Drawings = {
    sheets: ['enlarged', 'panels'],
    scale: 60,
    areas: [{ name: 'North side', from: [0, 0], to: [60, 30] }],
    scope: ['Stubs for later stalls.'],
    notes: ['Night work only.'],
  };
  const sheets = await drawnSheets(library(drawings), 'ANSI D');
  expect(sheets.map(({ number, title }) => `${number} ${title}`)).toEqual([
    'G-001 Cover, scope and notes',
    'E-401 Enlarged plan, North side',
    'E-601 Schedules: panels',
  ]);
  const all = wordsOf(sheets);
  // 1:60 is no standard scale; the next smaller one is 3/16".
  for (const word of ['Stubs for later stalls.', 'Night work only.', '3/16" = 1\'-0"']) expect(all).toContain(word);
  for (const word of ['Project ', 'Authority: ', 'Drawn by', 'Checked by'])
    expect(sheets[1]!.texts.map(({ text }) => text).some((text) => text.startsWith(word))).toBe(false);
  const named = await drawnSheets(library({ sheets: ['panels'] }, { number: '24-017', client: 'Nobody' }), 'ANSI D');
  expect(wordsOf(named)).toContain('Project 24-017');
});

test('the command line chooses over the site, and a wrong word is answered with all right ones', () => {
  const site = library({ purpose: 'bid', sheets: ['takeoff'], notes: ['Kept.'] });
  const permit = drawingsWished({ set: 'permit' });
  if (!permit.ok) throw new RangeError(permit.reason);
  expect(withDrawings(site, permit.wish).drawings).toEqual({ purpose: 'permit', notes: ['Kept.'] });
  const some = drawingsWished({ sheets: 'plan, panels' });
  if (!some.ok) throw new RangeError(some.reason);
  expect(withDrawings(site, some.wish).drawings).toEqual({
    purpose: 'bid',
    sheets: ['plan', 'panels'],
    notes: ['Kept.'],
  });
  expect(withDrawings(site, {})).toBe(site);
  for (const [wish, word] of [
    [{ set: 'permt' }, 'as-built'],
    [{ sheets: 'plan,pannels' }, 'setting-out'],
  ] as const) {
    const read = drawingsWished(wish);
    expect(read.ok ? '' : read.reason).toContain(word);
  }
});
