import { read, utils, type WorkSheet } from '@e965/xlsx';
import { beforeAll, describe, expect, test } from 'vitest';
import { conduitsSheet } from '../../../calc/sheets/conduits-sheet.ts';
import { panelSheet } from '../../../calc/sheets/panel-sheet.ts';
import { runsSheet } from '../../../calc/sheets/runs-sheet.ts';
import { settingOutSheet } from '../../../calc/sheets/setting-out-sheet.ts';
import { takeoffSheet } from '../../../calc/sheets/takeoff-sheet.ts';
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
});
