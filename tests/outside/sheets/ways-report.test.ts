import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { startSite } from '../../../calc/propose/start-site.ts';
import type { ReportParts } from '../../../calc/sheets/pdf/report/report.ts';
import { namesBeside } from '../../../calc/sheets/pdf/report/ways-compared.ts';
import { waysReport } from '../../../calc/sheets/pdf/report/ways-report.ts';
import { FIGURE_NAMES, FIGURES, type WayFigures } from '../../../calc/study/figures.ts';
import type { Study, StudyWay } from '../../../calc/study/shape.ts';
import { readPdf } from './pdf/read-pdf.ts';

const root = join(import.meta.dirname, '../../..');
const font = (name: string): Uint8Array => readFileSync(join(root, `calc/sheets/fonts/overpass-${name}.ttf`));
const PARTS: ReportParts = { fonts: { regular: font('regular'), bold: font('semibold') }, date: '2026-11-25' };
const WAYS = 19;

/** Nineteen ways whose figures are all different: invented. */
function madeStudy(): Study {
  const file = startSite({ name: 'Four', stalls: 4, rows: 1 });
  const ways = Array.from({ length: WAYS }, (_, i): StudyWay => {
    const figures = Object.fromEntries(FIGURE_NAMES.map((name, k) => [name, 100 * (k + 1) + i])) as WayFigures;
    const id = `W${String(i + 1).padStart(2, '0')}`;
    const name = `Overhead, one cord a drop; feeder ${i + 1} as it is`;
    const rest = { also: [], mount: 'overhead', supply: 'F1', amps: 32, says: [], forced: [] };
    const price = 90_000 + 137 * i;
    return { id, name, file, figures: { ...figures, price, trench: i === 3 ? null : 1200 + i }, ...rest };
  });
  const rest = { cannot: [], looked: WAYS, leftOut: [], assumes: [] };
  return { lot: 'Four', stalls: 4, ways, unbeaten: new Set(['W01', 'W19']), ...rest };
}

/** Lines of each page as poppler lays them out; another reader's words where it is not installed. */
async function linesOf(bytes: Uint8Array): Promise<readonly (readonly string[])[]> {
  const file = join(mkdtempSync(join(tmpdir(), 'ways-')), 'ways.pdf');
  writeFileSync(file, bytes);
  const { stdout, error } = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  if (error === undefined)
    return stdout
      .split('\f')
      .slice(0, -1)
      .map((page) => page.split('\n'));
  const { pages } = await readPdf(bytes);
  return pages.map(({ texts }) => [texts.map(({ text }) => text).join('  ')]);
}

test('the report of a study has every figure of every way side by side, and names every dot of its pictures', async () => {
  const study = madeStudy();
  const pages = await linesOf(await waysReport(study, PARTS));
  const [pictures, ...tables] = pages;
  const text = pictures!.join(' ');
  for (const up of ['energy', 'fullRate'] as const) expect(text).toContain(`Up: ${FIGURES[up].name}`);
  // Each way is named in both pictures.
  for (const { id } of study.ways) expect(text.match(new RegExp(`\\b${id}\\b`, 'g'))).toHaveLength(2);
  const prices = tables.slice(0, 3).flatMap((page) => page.join(' ').match(/\$\d\d,\d{3}/g) ?? []);
  expect(prices).toEqual(study.ways.map(({ figures }) => `$${figures.price!.toLocaleString('en-US')}`));
  const rows = tables.slice(0, 3).map((page) => page.join(' '));
  for (const row of rows) for (const name of FIGURE_NAMES) expect(row).toContain(FIGURES[name].name);
  expect(rows.join(' ').match(/W\d\d \*/g)).toEqual(['W01 *', 'W19 *']);
});

test('names of dots lie on no other name and on no dot', () => {
  const spot = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 120 }));
  fc.assert(
    fc.property(fc.array(spot, { minLength: 1, maxLength: 40 }), (spots) => {
      const size = 8;
      const dots = spots.map((at, i) => ({ id: `W${String(i + 1).padStart(2, '0')}`, at }));
      const named = namesBeside(dots, size);
      expect(named).toHaveLength(dots.length);
      // A name of three signs of a condensed sans is at most half its size a sign wide.
      const boxes = named.map(({ label: [x, y] }) => [x - 6, y, x + 6, y + 0.75 * size] as const);
      for (const [i, a] of boxes.entries())
        for (const b of boxes.slice(i + 1))
          expect(a[0] >= b[2] || b[0] >= a[2] || a[1] >= b[3] || b[1] >= a[3]).toBe(true);
      for (const [x0, y0, x1, y1] of boxes)
        for (const {
          at: [x, y],
        } of dots)
          expect(x < x0 || x > x1 || y < y0 || y > y1).toBe(true);
    }),
  );
});
