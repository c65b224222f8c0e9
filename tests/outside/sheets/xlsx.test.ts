import { read, utils, type WorkSheet } from '@e965/xlsx';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { takeoffSheet } from '../../../calc/sheets/cost/takeoff-sheet.ts';
import { conduitsSheet } from '../../../calc/sheets/schedules/conduits-sheet.ts';
import { panelSheet } from '../../../calc/sheets/schedules/panel-sheet.ts';
import { runsSheet } from '../../../calc/sheets/schedules/runs-sheet.ts';
import { settingOutSheet } from '../../../calc/sheets/site-work/setting-out-sheet.ts';
import { xlsx } from '../../../calc/sheets/xlsx.ts';
import { nastyLot, plannedSample } from './planned-samples.ts';

const { site, planned } = plannedSample('library-lot');
const tables = [
  { name: 'runs', rows: runsSheet(site, planned) },
  { name: 'conduits', rows: conduitsSheet(site, planned) },
  { name: 'panel schedule', rows: panelSheet(site, planned) },
  { name: 'takeoff', rows: takeoffSheet(site, planned) },
  { name: 'setting out', rows: settingOutSheet(site, planned) },
];

// Read back by a reader that is not the writer's.
describe('the workbook, read by another program', () => {
  let sheets: Record<string, WorkSheet>;
  beforeAll(async () => {
    sheets = read(await xlsx(tables)).Sheets;
  });
  const rowsOf = (name: string): unknown[][] =>
    utils.sheet_to_json(sheets[name] as WorkSheet, { header: 1, defval: null });

  test('has a sheet for each table, with the same cells', () => {
    expect(Object.keys(sheets)).toEqual(tables.map(({ name }) => name));
    for (const { name, rows } of tables) {
      const back = rowsOf(name);
      rows.forEach((row, i) => {
        row.forEach((value, j) => {
          const expected = typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
          expect(back[i]?.[j] ?? null).toEqual(expected);
        });
      });
    }
  });
  test('holds the runs as numbers that equal the plan', () => {
    const [, ...rows] = rowsOf('runs');
    planned.runs.forEach((run, i) => {
      expect(rows[i]?.[4]).toBeCloseTo(run.length as number, 3);
      expect(rows[i]?.[5]).toBeCloseTo(run.conductorLength as number, 3);
    });
  });
  test('takes names that look like formulas as text', async () => {
    const nasty = nastyLot();
    const book = read(await xlsx([{ name: 'panel', rows: panelSheet(nasty.site, nasty.planned) }]));
    const cells = Object.values(book.Sheets.panel ?? {}) as { t?: string; f?: string; v?: unknown }[];
    expect(cells.filter(({ f }) => f !== undefined)).toEqual([]);
    expect(cells.some(({ t, v }) => t === 's' && String(v).startsWith('=1+1'))).toBe(true);
  });
  test('keeps every cell of any table, whatever its texts are called', async () => {
    const text = fc.oneof(
      fc.string({ maxLength: 12, unit: 'binary' }),
      fc.constantFrom('constructor', '__proto__', 'toString', '  padded ', '<b>&amp;</b>', '=1+1', ''),
    );
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    const row = fc.array(fc.oneof(text, number, fc.boolean(), fc.constant(null)), { maxLength: 30 });
    const table = fc.array(row, { minLength: 1, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(fc.array(table, { minLength: 1, maxLength: 3 }), async (lots) => {
        const book = read(await xlsx(lots.map((rows, i) => ({ name: `t${i}`, rows }))));
        lots.forEach((rows, t) => {
          const sheet = book.Sheets[`t${t}`]!;
          rows.forEach((cells, i) => {
            cells.forEach((value, j) => {
              const found: { v?: unknown } | undefined = sheet[utils.encode_cell({ r: i, c: j })];
              const asked = typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
              if (typeof asked === 'string') expect(plain(found?.v ?? '')).toBe(plain(asked));
              else expect(found?.v ?? null).toEqual(asked);
            });
          });
        });
      }),
      { numRuns: 12 },
    );
  });
});

/** A text without the signs that XML cannot hold, and those that it is advised against; its lines end alike. */
const plain = (text: unknown): string =>
  String(text)
    .replace(/[^\P{C}\t\n\r]|\ufffd/gu, '')
    .replace(/\r\n?/g, '\n');
