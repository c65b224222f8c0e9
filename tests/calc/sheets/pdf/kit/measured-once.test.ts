import { expect, test } from 'vitest';
import { packedFonts } from '../../../../../calc/cli/writing/fonts.ts';
import { letteredPlan } from '../../../../../calc/sheets/lettered/lettered-plan.ts';
import type { Lettering } from '../../../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { wrapped } from '../../../../../calc/sheets/pdf/kit/lettering/lines-of-text.ts';
import { penWith } from '../../../../../calc/sheets/pdf/kit/pen.ts';
import { flowTables, type Table, type TablePage } from '../../../../../calc/sheets/pdf/kit/tables/table.ts';
import { drawTable } from '../../../../../calc/sheets/pdf/kit/tables/table-drawing.ts';
import { plannedSample } from '../../../../outside/sheets/planned-samples.ts';
import { plainLettering } from './plain-lettering.ts';

/** A lettering that counts how often it is asked for a width. */
function counted(): { readonly lettering: Lettering; readonly asked: () => number } {
  const plain = plainLettering();
  let count = 0;
  const width: Lettering['width'] = (...given) => {
    if (given[0] !== ' ') count++;
    return plain.width(...given);
  };
  return { lettering: { ...plain, width }, asked: () => count };
}

test('a cell of one line is measured for its column and for its line, and not word by word', () => {
  const { lettering, asked } = counted();
  const rows = Array.from({ length: 200 }, (_, i) => ['D1', `four words of ${i}`, 'and some more of them', 'end']);
  const table: Table = {
    short: 'some',
    title: 'Some',
    columns: ['a', 'b', 'c', 'd'].map((head) => ({ head })),
    rows,
  };
  const pages = flowTables([table], { x: 0, y: 0, width: 900, height: 700 }, lettering);
  const pen = penWith(lettering);
  for (const page of pages) for (const part of page) drawTable(pen, part);
  // Heads and titles besides.
  expect(asked()).toBeLessThan(2 * 4 * rows.length + 200);
});

test('a table is laid out once for all the ways to put it on sheets with others', () => {
  const { lettering, asked } = counted();
  const tables = ['One', 'Two'].map(
    (title): Table => ({
      short: title,
      title,
      columns: [{ head: 'a' }, { head: 'b' }],
      rows: Array.from({ length: 100 }, (_, i) => [`${i}`, `words of ${i}`]),
    }),
  );
  const field = { x: 0, y: 0, width: 900, height: 700 };
  const apart = tables.flatMap((table) => flowTables([table], field, lettering));
  const once = asked();
  const together = flowTables(tables, field, lettering);
  expect(asked()).toBe(once);
  const rowsOf = (pages: readonly TablePage[]) => pages.flatMap((page) => page.flatMap(({ rows }) => rows));
  expect(rowsOf(together)).toEqual(rowsOf(apart));
});

test('a text at the edge of its room is parted as by its words', () => {
  const lettering = plainLettering();
  const text = 'ten of them and more';
  const whole = lettering.width(text, 10);
  expect(wrapped(text, whole + 0.01, 10, lettering)).toEqual([text]);
  expect(wrapped(text, whole - 0.01, 10, lettering)).toEqual(['ten of them and', 'more']);
  expect(wrapped(`  ten  of ${text} `, 1000, 10, lettering)).toEqual([`ten of ${text}`]);
});

test('DXF and SVG of a plan are of one lettered plan; another day has its own', async () => {
  const { site, planned } = plannedSample('library-lot');
  const parts = { fonts: await packedFonts(), date: '2026-01-01', file: 'x' };
  const one = await letteredPlan(site, planned, parts);
  expect(await letteredPlan(site, planned, { ...parts })).toBe(one);
  expect(await letteredPlan(site, planned, { ...parts, date: '2026-01-02' })).not.toBe(one);
});
