import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { siteAsBuilt } from '../../../../calc/plan/as-built.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { movedPlaces } from '../../../../calc/sheets/pdf/as-built/built-lot.ts';
import { withDifferences } from '../../../../calc/sheets/pdf/as-built/differences.ts';
import { drawingSet } from '../../../../calc/sheets/pdf/drawing-set.ts';
import type { Table } from '../../../../calc/sheets/pdf/kit/tables/table.ts';
import { newMarks, type Saying } from '../../../../routing/site/records/new-mark.ts';
import type { Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { libraryLot } from '../../field/start-lot.ts';
import { TINY_JPEG, TINY_JPEG_HASH } from '../../field/tiny-jpeg.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';

const FILE = libraryLot();
const built = (...sayings: Saying[]): Site => {
  let made = 0;
  const records = newMarks([], sayings, { by: 'JB', on: '2026-05-30' }, () => `m${++made}`);
  return toSite({ ...FILE, drawings: { purpose: 'as-built' }, records } as SiteFile);
};
const MOVED: Saying = { of: 'D05', part: 'box', what: 'place', place: [54, 9, 11] };
const wordsOf = (sheets: readonly DrawnSheet[]): string =>
  sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');

describe('the set of the work as built', () => {
  test('draws the lot as it was measured, tells what moved by how much, and marks what differs in its schedules', async () => {
    // D05 is drawn at 52, 9, 11 ft up; it was built 2 ft along the row, its retractor with it.
    const sheets = await drawnSheets(
      built(MOVED, { of: 'EV05', part: 'breaker', what: 'checked', text: '60 A' }),
      'ANSI D',
    );
    const numbers = sheets.map(({ number }) => number);
    for (const number of ['E-101', 'E-201', 'E-601', 'E-701']) expect(numbers).toContain(number);
    expect(wordsOf(sheets.filter(({ number }) => number.startsWith('E-1')))).toContain(`D05 2' 0" off`);
    const schedules = wordsOf(sheets.filter(({ number }) => number.startsWith('E-6')));
    // Its branch is told as built, with what it was as drawn.
    const before = plan(toSite(FILE)).runs.find(({ charger }) => charger === 'EV05')!.length!;
    const after = plan(siteAsBuilt(built(MOVED))).runs.find(({ charger }) => charger === 'EV05')!.length!;
    expect(after).not.toBe(before);
    expect(schedules).toMatch(/\(drawn \d+' \d+"\)/);
    // What was set out stays as drawn, with what was measured beside it.
    expect(schedules).toContain(`3 − 1' 0"`);
    expect(schedules).toContain(`3 + 1' 0"`);
    const inspection = wordsOf(sheets.filter(({ number }) => number.startsWith('E-7')));
    expect(inspection).toContain('DEVIATES');
    expect(inspection).toMatch(/2' 0" from the drawing/);
    expect(inspection).toMatch(/OPEN ITEMS: \d+/i);
  });

  test('has no schedule marked and nothing moved where nothing was measured', async () => {
    const words = wordsOf(await drawnSheets(built(), 'ANSI D'));
    expect(words).not.toMatch(/\(drawn |not drawn\)| off\b/);
  });

  test('conduits keep the circuits that they were drawn with, where the box of one of them was moved along its row', async () => {
    const site = built(MOVED);
    const words = wordsOf(await drawnSheets(site, 'ANSI D'));
    const alone = words.match(/\((not drawn|drawn alone)\)/g) ?? [];
    expect(alone).toEqual([]);
  });

  test('on turned gridlines what moved is as far off', () => {
    const site = built(MOVED);
    const turned: Site = { ...site, gridlines: { ...site.gridlines, rotation: 30 } };
    expect(movedPlaces(turned, siteAsBuilt(turned))).toEqual([
      { of: 'D05', drawn: [52, 9, 11], built: [54, 9, 11], away: 2 },
    ]);
  });
});

test('photos of the work are printed with whom and when; those that are not there are told of', async () => {
  const photo = { hash: TINY_JPEG_HASH, bytes: TINY_JPEG.byteLength, width: 16, height: 12 };
  const gone = { ...photo, hash: '0'.repeat(64) };
  const site = built(
    { of: 'D05', part: photo.hash, what: 'photo', photo },
    { of: 'D06', part: gone.hash, what: 'photo', photo: gone },
    { of: 'D07', part: photo.hash, what: 'photo', photo },
  );
  const font = (name: string): Uint8Array =>
    readFileSync(join(import.meta.dirname, '../../../../calc/sheets/fonts', `overpass-${name}.ttf`));
  const told: string[] = [];
  const bytes = await drawingSet({ ...site, drawings: { sheets: ['photos'] } }, plan(site), {
    fonts: { regular: font('regular'), bold: font('semibold') },
    date: '2026-05-31',
    paper: 'tabloid',
    photos: async (hash) => (hash === TINY_JPEG_HASH ? TINY_JPEG : null),
    tell: (says) => told.push(says),
  });
  expect(told.join(' ')).toContain('1 photo of the records is not here and is left out.');
  const doc = await PDFDocument.load(bytes);
  expect(doc.getPageCount()).toBe(2);
  // Twice on the sheet, once in the file.
  const text = Buffer.from(await doc.save({ useObjectStreams: false })).toString('latin1');
  expect(text.match(/\/Subtype\s*\/Image/g)).toHaveLength(1);
});

describe('what differs in a schedule', () => {
  const table = (rows: Table['rows']): Table => ({ short: 't', title: 'T', columns: [], rows });

  test('stands beside what it was; rows that are new or gone are said to be', () => {
    const was = table([
      ['A', '1', { text: 'x', swatches: ['red'] }],
      ['B', '2', 'y'],
      ['B', '3', 'y'],
    ]);
    const now = table([
      ['A', '4', { text: 'z', swatches: ['red'] }],
      ['B', '2', 'y'],
      ['C', '5', 'y'],
    ]);
    const { rows, foot } = withDifferences(now, was);
    expect(rows).toEqual([
      ['A', '4 (drawn 1)', { text: 'z (drawn x)', swatches: ['red'] }],
      ['B', '2', 'y'],
      ['C (not drawn)', '5', 'y'],
      ['B (drawn alone)', '3', 'y'],
    ]);
    expect(foot).toHaveLength(1);
  });

  test('of two that are alike is nothing', () => {
    const one = table([['A', '1']]);
    expect(withDifferences(one, table([['A', '1']]))).toBe(one);
    expect(withDifferences(one, undefined)).toBe(one);
  });
});
