import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { gridFor } from '../../../../calc/sheets/pdf/details/detail-sheets.ts';
import { PAPERS, sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { SMALL } from '../../../web/document/small-site.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';

function library(): SiteFile {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

/** The library lot with its first stalls alone, and what serves them. */
function fewStalls(count = 4): SiteFile {
  const file = library();
  const chargers = file.chargers!.slice(0, count);
  const drops = new Set(chargers.map(({ drop }) => drop));
  return {
    ...file,
    stalls: file.stalls!.slice(0, count),
    chargers,
    drops: file.drops!.filter(({ id }) => drops.has(id)),
  };
}

const LOTS = { 'a small lot': SMALL, 'four stalls': fewStalls(), 'library lot': library() };

/** Of a sheet of tables: the share of its field that is written on, from the top down to its lowest line. */
function usedOf({ texts }: DrawnSheet, paper: (typeof PAPERS)[number]): number {
  const { field } = sheetShape(paper);
  const own = texts.filter(({ corners: [at] }) => at![0] < field.x + field.width);
  const lowest = Math.min(...own.map(({ corners: [at] }) => at![1]));
  return (field.y + field.height - lowest) / field.height;
}

describe.each(Object.entries(LOTS))('schedules of %s', (_, file) => {
  test.each(PAPERS)('on %s stand together on a sheet where two would be as good as empty', async (paper) => {
    const site = toSite({ ...file, drawings: { purpose: 'construction' } });
    const sheets = await drawnSheets(site, paper, (key) => /^(load|schedules|loads on|one-line)/.test(key));
    const tables = sheets.filter(({ key }) => !key.startsWith('one-line'));
    const used = tables.map((sheet) => usedOf(sheet, paper));
    for (const [i, share] of used.slice(1).entries())
      expect([tables[i]!.title, share + used[i]! > 0.75]).toEqual([tables[i]!.title, true]);
    // Each of them once, joined or not.
    const words = sheets.flatMap(({ texts }) => texts.map(({ text }) => text));
    for (const title of ['CIRCUIT AND RUN SCHEDULE', 'CONDUIT SCHEDULE', 'FEEDER SCHEDULE', 'SETTING-OUT SCHEDULE'])
      expect(words.filter((text) => text === title)).toEqual([title]);
    expect(words.filter((text) => text.startsWith('LOAD CALCULATION, SERVICE OF'))).toHaveLength(1);
    expect(words).toContain('SUPPLY ONE-LINE');
  });
});

test('load calculation and schedules stand beside the one-line of a small supply, and have their names in the title', async () => {
  const site = toSite({ ...LOTS['four stalls'], drawings: { purpose: 'permit' } });
  const sheets = await drawnSheets(site, 'ANSI D');
  expect(sheets.filter(({ number }) => number.startsWith('E-6')).map(({ number, title }) => [number, title])).toEqual([
    [
      'E-601',
      'Supply one-line and load calculation; schedules: circuits and runs, panels, feeders, conduits, accessible stalls',
    ],
  ]);
});

test('tables stand closer under one another where that saves a sheet, and nowhere else', async () => {
  const gaps = async (file: SiteFile): Promise<readonly [sheets: number, least: number]> => {
    const site = toSite({ ...file, drawings: { purpose: 'permit' } });
    const sheets = (await drawnSheets(site, 'ANSI D')).filter(({ number }) => number.startsWith('E-6'));
    const titles = ['BOARD SE1', 'CONDUIT SCHEDULE', 'FEEDER SCHEDULE', 'HOW IT WAS FOUND'];
    const between = sheets.flatMap(({ texts }) =>
      titles.flatMap((title) => {
        const own = texts.find(({ text }) => text.startsWith(title))?.corners;
        if (!own) return [];
        const above = texts
          .filter(({ corners: [at] }) => Math.abs(at![0] - own[0]![0]) < 5 && at![1] > own[3]![1])
          .map(({ corners: [at] }) => at![1] - own[3]![1]);
        return above.length > 0 ? [Math.min(...above)] : [];
      }),
    );
    return [sheets.length, Math.min(...between)];
  };
  const [sheets, closer] = await gaps(library());
  const [few, usual] = await gaps(fewStalls());
  expect([sheets, few]).toEqual([1, 1]);
  expect(usual - closer).toBeCloseTo(11, 0);
  expect(closer).toBeGreaterThan(9);
});

test('details stand closer where a second sheet would else be half empty', () => {
  for (let count = 1; count <= 60; count++)
    for (const paper of PAPERS) {
      const [columns, rows] = gridFor(count, paper);
      const each = columns * rows;
      const [usual, closer] = paper === 'ANSI D' ? [6, 8] : [4, 6];
      expect([usual, closer]).toContain(each);
      // Never more sheets than in the usual grid, and closer only for one sheet less.
      if (each === closer) expect(Math.ceil(count / closer)).toBeLessThan(Math.ceil(count / usual));
    }
  expect(gridFor(8, 'ANSI D')).toEqual([4, 2]);
  expect(gridFor(6, 'ANSI D')).toEqual([3, 2]);
  expect(gridFor(5, 'tabloid')).toEqual([3, 2]);
  expect(gridFor(11, 'ANSI D')).toEqual([3, 2]);
});

test.each(PAPERS)('run strips of a few stalls fill their sheet on %s, all columns of it', async (paper) => {
  const site = toSite(fewStalls(8));
  const sheets = await drawnSheets(site, paper, (key) => key.startsWith('strips'));
  expect(sheets).toHaveLength(1);
  const { field } = sheetShape(paper);
  const own = sheets[0]!.texts.filter(({ corners: [at] }) => at![0] < field.x + field.width);
  const words = own.map(({ text }) => text);
  for (const { id } of site.chargers) expect(words.filter((text) => text.startsWith(`${id} at `))).toHaveLength(1);
  // Headings of runs in the right half as well as in the left, and the lowest words in the lower half.
  const heads = own.filter(({ text }) => / at D\d/.test(text)).map(({ corners: [at] }) => at![0] - field.x);
  expect(heads.filter((x) => x > 0.4 * field.width).length).toBe(heads.filter((x) => x < 0.4 * field.width).length);
  expect(usedOf(sheets[0]!, paper)).toBeGreaterThan(0.6);
});
