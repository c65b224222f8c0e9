import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../../../routing/site/file/read.ts';
import { SET_PURPOSES, type SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drawings, Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { SMALL } from '../../../web/document/small-site.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';

function fileOf(name: string): SiteFile {
  if (name === 'small') return SMALL;
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

const siteOf = (name: string, drawings: Drawings): Site => toSite({ ...fileOf(name), drawings });

const wordsOf = ({ texts }: DrawnSheet): string => texts.map(({ text }) => text).join(' ');

/** What the words of a set call, and what must then be lettered on some sheet of it. */
const CALLED: readonly (readonly [RegExp, RegExp])[] = [
  [/setting-out schedule/, /SETTING-OUT SCHEDULE/],
  [/setting-out by the tape/, /SETTING-OUT BY THE TAPE/],
  [/conduit schedule/, /CONDUIT SCHEDULE/],
  [/circuit schedule/, /CIRCUIT AND RUN SCHEDULE/],
  [/panel schedules/, /(PANEL|BOARD) \S+ .*(Wire|Breaker)/],
  [/run strips/, /RUN STRIPS/],
  [/see the legend/, /SYMBOLS OF THE PLANS/],
  [/on the enlarged plans/, /ENLARGED PLAN/],
  [/one-line/, /SUPPLY ONE-LINE/],
  [/as scheduled/, /SCHEDULE/],
  [/as detailed/, /\bDETAILS\b/],
  [/findings say/, /FINDINGS/],
  [/loads table|support schedule/, /SUPPORT SCHEDULE/],
];

const SOME_PARTS: readonly (readonly SheetPart[])[] = [
  ['plan'],
  ['enlarged', 'details'],
  ['legend', 'sections', 'panels'],
];

const SETS: readonly (readonly [string, Drawings])[] = [
  ...SET_PURPOSES.map((purpose) => [purpose, { purpose }] as const),
  ...SOME_PARTS.map((sheets) => [sheets.join(', '), { sheets }] as const),
];

describe.each(['library-lot', 'small'])('of %s', (name) => {
  test.each(SETS)('a set for %s calls no sheet, view or schedule that is not in it', async (_, drawings) => {
    const sheets = await drawnSheets(siteOf(name, drawings), 'ANSI D');
    const all = sheets.map(wordsOf).join(' ');
    expect(CALLED.filter(([call, answer]) => call.test(all) && !answer.test(all)).map(([call]) => call.source)).toEqual(
      [],
    );

    const plans = sheets.filter(({ number }) => /^E-[14]/.test(number));
    const sections = sheets.filter(({ number }) => number.startsWith('E-3'));
    const cut = plans.flatMap(({ strokes }) => strokes.filter(({ layer }) => layer === 'sections'));
    expect(cut.length > 0).toBe(sections.length > 0 && plans.length > 0);
    // Each mark on a plan has the number of a section that is drawn, and its name is the title there.
    for (const { texts } of plans) {
      const marks = texts.filter(({ layer }) => layer === 'sections').map(({ text }) => text);
      for (const [i, text] of marks.entries()) {
        const [mark, number] = text.split('/');
        if (!/^\d+\/E-3/.test(text)) continue;
        const sheet = sections.find((one) => one.number === number)!;
        const titles = sheet.texts.map((one) => one.text);
        const at = titles.findIndex((one, k) => one === mark && titles[k + 1] === marks[i + 1]!.toUpperCase());
        expect(at).toBeGreaterThanOrEqual(0);
      }
      if (marks.length > 0) expect(marks.filter((text) => /^\d+\/E-3/.test(text)).length).toBe(marks.length / 2);
    }
    // Cover and key plans have no room for the numbers of cuts.
    for (const { strokes } of sheets.filter(({ number }) => number.startsWith('G-')))
      expect(strokes.some(({ layer }) => layer === 'sections')).toBe(false);
    const numbers = new Set(sheets.map(({ number }) => number));
    // The index calls each sheet what its title block does.
    const index = sheets.find(({ number }) => number === 'G-001')?.texts.map(({ text }) => text) ?? [];
    for (const sheet of index.length > 0 ? sheets : [])
      expect(wordsOf(sheet).toUpperCase()).toContain(index[index.indexOf(sheet.number) + 1]!.toUpperCase());
    for (const { number, texts } of sheets)
      for (const { text } of texts)
        for (const [called] of text.matchAll(/\b[GE]-[0-9]\d\d\b/g))
          if (!number.startsWith('E-0')) expect([...numbers]).toContain(called);
  });

  test('the legend of a permit set explains neither strips nor views that it has not, nor equipment that the lot has not', async () => {
    const site = siteOf(name, { purpose: 'permit' });
    const legend = (await drawnSheets(site, 'ANSI D', (key) => /^(cover|legend)$/.test(key))).map(wordsOf).join(' ');
    expect(legend).not.toContain('RUN STRIPS');
    expect(legend.includes('inverter')).toBe(site.equipment.some(({ kind }) => kind === 'inverter'));
    expect(legend.includes('delta to grounded wye')).toBe(site.equipment.some(({ kind }) => kind === 'transformer'));
    expect(legend.includes('pull box or conduit body')).toBe(site.pullpoints.length > 0);
    expect(legend).toContain('ABBREVIATIONS');
  });
});
