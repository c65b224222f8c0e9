import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { dayOf } from '../../../calc/sheets/days/day.ts';
import { safeFileName } from '../../../calc/sheets/file-name.ts';
import { conduitsSheet } from '../../../calc/sheets/schedules/conduits-sheet.ts';
import { settingOutSheet } from '../../../calc/sheets/site-work/setting-out-sheet.ts';
import { xlsx } from '../../../calc/sheets/xlsx.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';

describe('the same site gives the same bytes', () => {
  test('a workbook is the same whenever it is written', async () => {
    const write = () => xlsx([{ name: 'runs', rows: [['a'], [1.5], ['=b']] }]);
    const first = await write();
    await new Promise((done) => setTimeout(done, 2100));
    expect(await write()).toEqual(first);
    expect(strFromU8(unzipSync(first)['xl/workbook.xml']!)).toContain('runs');
  });
});

test('the day is that of the place, not of Greenwich', () => {
  expect(dayOf(new Date(2026, 10, 5, 23, 59))).toBe('2026-11-05');
  expect(dayOf(new Date(2026, 0, 31, 0, 1))).toBe('2026-01-31');
});

test('signs that nobody sees are left out of a table', () => {
  expect(csv([['a\0b\u0007c\u001bd\u009be', 'x\ty']])).toBe('\ufeffabcde,x\ty\r\n');
  expect(csv([['\u001b=1']])).toBe('\ufeff"\'=1"\r\n');
});

test.each([
  ['=HYPERLINK("x")', 'HYPERLINK( x )'],
  ['-2+3', '2+3'],
  ['CON', 'CON site'],
  ['nul.txt', 'nul site.txt'],
  ['COM1', 'COM1 site'],
  ['Conway lot', 'Conway lot'],
  ['..', 'site'],
  ['@x', 'x'],
])('%j is no name that a program acts on', (words, name) => {
  expect(safeFileName(words)).toBe(name);
});

describe('tables that a spreadsheet reads as they are meant', () => {
  const site = toSite(libraryLot());

  test('a trade size is no day of the year', () => {
    const [head, ...rows] = conduitsSheet(site, plan(site));
    const at = head!.indexOf('trade size');
    const sizes = rows.flatMap((row) => (row.length > 1 && row[at] !== null ? String(row[at]) : []));
    expect(sizes.length).toBeGreaterThan(0);
    for (const size of sizes) expect(size).toMatch(/^\d+(-\d+\/\d+|\/\d+)? in$/);
  });

  test('setting-out has a number beside each measure of the tape', () => {
    const [head, first] = settingOutSheet(site, plan(site));
    const cell = (name: string) => first![head!.indexOf(name)];
    // D01 hangs at 13.5, 9 and 11; the nearest gridlines are those at 26 and 0.
    expect([cell('offset x (ft)'), cell('offset y (ft)'), cell('above grade (ft)')]).toEqual([-12.5, 9, 11]);
    expect(cell('offset x')).toBe('-12\' 6"');
  });
});
