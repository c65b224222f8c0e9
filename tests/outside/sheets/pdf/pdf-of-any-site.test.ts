import { describe, expect, test } from 'vitest';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { NASTY, nastyLot, plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { close, textOf, words } from './pdf-parts.ts';
import { type ReadPdf, readPdf } from './read-pdf.ts';
import { overlapping } from './text-boxes.ts';

const wordsOf = (pdf: ReadPdf): readonly string[] => pdf.pages.flatMap(words);

describe('what a person may write', () => {
  test('signs of the trade come out as they went in', async () => {
    const signs = '12′ 6″ ½ ¼ ⅜ Ω 90° ≤ ≥ × ± – µ → é ł ğ Я';
    const sample = plannedSample('library-lot', (file) => ({ ...file, name: signs }));
    const pdf = await readPdf(await setOf(sample));
    expect(pdf.title).toBe(`${signs}: drawing set`);
    expect(wordsOf(pdf)).toContain(signs);
  });
  test('names that look like markup, formulas or control codes are only text', async () => {
    const sample = nastyLot();
    const pdf = await readPdf(await setOf(sample, { file: '</Title>(x) Tj ET\u202e<</JS>>.json', paper: 'ANSI D' }));
    const said = close(wordsOf(pdf).join(''));
    for (const name of NASTY) expect(said).toContain(close(name.replace(/[\r\n]+/g, ' ')));
    expect(said).toContain('</Title>(x)TjET<</JS>>.json');
    expect(pdf.hasScripts).toBe(false);
    for (const page of pdf.pages) expect(overlapping(page.texts)).toEqual([]);
  });
  test('the cover and the writer say which signs the lettering does not have, and names can still be told apart', async () => {
    const sample = plannedSample('library-lot', (file) => ({ ...file, name: 'Lot 中' }));
    const told: string[] = [];
    const pdf = await readPdf(await setOf(sample, { tell: (says) => told.push(says) }));
    expect(told).toEqual([expect.stringContaining('no typeface of the sheets has: it is printed as [U+4E2D]')]);
    expect(textOf(pdf, /^G-/)).toContain(close('which no typeface of the sheets has: it is printed as [U+4E2D]'));
    expect(wordsOf(pdf)).toContain('Lot [U+4E2D]');
  });
});

describe('sites of other kinds', () => {
  test('a metric site is printed in meters, at a metric scale', async () => {
    const pdf = await readPdf(await setOf(plannedSample('library-lot', inMeters)));
    const said = wordsOf(pdf);
    expect(said.some((text) => /^1:(50|100|200|250)$/.test(text))).toBe(true);
    // 26 ft between the first two gridlines, 7.9248 m.
    expect(said).toContain('7.925 m');
    const schedules = textOf(pdf, /^E-6/);
    const { planned } = plannedSample('library-lot');
    for (const { length } of planned.runs) expect(schedules).toContain(close(printLength(length!, 'm')));
    expect(schedules).not.toMatch(/\d'\d/);
  });
  test('a site with nothing on it still has a cover, a legend and a plan', async () => {
    const bare = plannedSample('library-lot', ({ format, version, units }) => ({
      format,
      version,
      units,
      name: 'Bare',
    }));
    const pdf = await readPdf(await setOf(bare));
    expect(pdf.pages.map(({ label }) => label).filter((label) => !label.startsWith('G-'))).toEqual(['E-001', 'E-101']);
  });
  test('every layer of the drawing can be switched in a viewer', async () => {
    const pdf = await readPdf(await setOf(plannedSample('library-lot')));
    expect(pdf.layers).toContain('E-POWR-DROP drops: box and retractor');
    expect(pdf.layers).toContain('C-PKNG-STAL stalls');
  });
});

/** The same site in meters. Every number of the library's file but counts, electrical figures and angles is a length. */
function inMeters(file: SiteFile): SiteFile {
  const m = (feet: number): number => feet * 0.3048;
  const at = <P extends readonly number[]>(point: P): P => point.map(m) as unknown as P;
  return {
    ...file,
    units: 'm',
    stalls: (file.stalls ?? []).map((one) => ({ ...one, at: at(one.at), width: m(one.width), depth: m(one.depth) })),
    columns: (file.columns ?? []).map((one) => ({
      ...one,
      at: at(one.at),
      size: at(one.size),
      height: m(one.height ?? 12),
    })),
    members: (file.members ?? []).map((one) => ({ ...one, from: at(one.from), to: at(one.to) })),
    keepouts: (file.keepouts ?? []).map((one) => ({
      ...one,
      outline: one.outline.map(at),
      from: m(one.from ?? 0),
      to: m(one.to ?? 0),
    })),
    aisles: (file.aisles ?? []).map((one) => ({ ...one, outline: one.outline.map(at) })),
    gridlines: {
      x: (file.gridlines?.x ?? []).map((one) => ({ ...one, at: m(one.at) })),
      y: (file.gridlines?.y ?? []).map((one) => ({ ...one, at: m(one.at) })),
    },
    equipment: (file.equipment ?? []).map((one) => ({
      ...one,
      at: at(one.at),
      size: at(one.size),
      entry: at(one.entry),
      ...(one.workingSpace === undefined ? {} : { workingSpace: m(one.workingSpace) }),
    })),
    feeders: (file.feeders ?? []).map((one) => ({
      ...one,
      ...(one.length === undefined ? {} : { length: m(one.length) }),
    })),
    raceways: (file.raceways ?? []).map((one) => ({ ...one, path: one.path.map(at) })),
    pullpoints: (file.pullpoints ?? []).map((one) => ({ ...one, at: at(one.at) })),
    drops: (file.drops ?? []).map((one) => ({
      ...one,
      box: at(one.box),
      cord: m(one.cord),
      ...(one.retractor === undefined ? {} : { retractor: at(one.retractor) }),
      ...(one.restHeight === undefined ? {} : { restHeight: m(one.restHeight) }),
    })),
  };
}
