import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { expectedAtBox } from '../../../calc/field/commissioning/expected-volts.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { blankCommissioning, commissioningReport } from '../../../calc/sheets/pdf/report/commissioning-report.ts';
import type { ReportParts } from '../../../calc/sheets/pdf/report/report.ts';
import { commissioningSheet } from '../../../calc/sheets/site-work/commissioning-sheet.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { plannedSample } from './planned-samples.ts';

const root = join(import.meta.dirname, '../../..');
const font = (name: string): Uint8Array => readFileSync(join(root, `calc/sheets/fonts/overpass-${name}.ttf`));
const PARTS: ReportParts = { fonts: { regular: font('regular'), bold: font('semibold') }, date: '2026-11-30' };

const read = (id: string, part: string, reading: Mark['reading'] & object): Mark => ({
  id,
  of: 'EV05',
  part,
  what: 'measured',
  by: 'JB',
  on: '2026-11-30',
  time: 1,
  reading,
});
const FILLED = plannedSample('library-lot', (file) => ({
  ...file,
  records: [
    read('a', 'insulation B-C', { value: 12, unit: 'Mohm' }),
    read('b', 'volts open', { value: 209.2, unit: 'V' }),
    read('c', 'volts loaded', { value: 205.4, unit: 'V', amps: 32 }),
    read('d', 'fault trip', { word: 'tripped' }),
  ],
}));

async function textOf(bytes: Uint8Array): Promise<readonly string[]> {
  const { pages } = await readPdf(bytes);
  return pages.map(({ texts }) =>
    texts
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/g, ' '),
  );
}

test('the sheets as filled in have a page for the lot with what failed, and one for each charger with what was read', async () => {
  const { site, planned } = FILLED;
  const [lot, ...sheets] = await textOf(await commissioningReport(site, planned, PARTS));
  expect(lot).toContain('3 pass, 1 fail');
  expect(lot).toMatch(/EV05 Insulation resistance, B to C 12 MΩ 50 MΩ or more fails: 38 MΩ under 50/);
  for (const { id } of site.chargers) expect(sheets.filter((text) => text.includes(`${id} AT `))).toHaveLength(1);
  const own = sheets.find((text) => text.includes('EV05 AT '))!;
  expect(own).toMatch(/205\.4 V at 32 A JB, 2026-11-30 passes/);
  expect(own).toContain('Measured by');
});

test('the blank ones have nothing that was read, and room to write', async () => {
  const { site, planned } = FILLED;
  const own = (await textOf(await blankCommissioning(site, planned, PARTS))).find((text) => text.includes('EV05 AT '))!;
  expect(own).not.toContain('JB');
  expect(own).not.toContain('205.4');
  expect(own).toMatch(/as the equipment is marked: _+ _+ lbf-in/);
  expect(own).toContain('________ V at ________ A');
});

test('the CSV, read by another program, has a row for each test with its limit and source', () => {
  const { site, planned } = FILLED;
  const { data } = Papa.parse<Record<string, string>>(csv(commissioningSheet(site, planned)), { header: true });
  const row = data.find(({ of, where }) => of === 'EV05' && where === 'at the box under load')!;
  expect(row).toMatchObject({ read: '205.4', 'at load (A)': '32', by: 'JB', result: 'passes' });
  // 209.2 V read without load, less what the plan drops at 32 A.
  const at = (amps: number): number => expectedAtBox(site, planned, 'EV05', amps)!;
  expect(Number(row.expected)).toBeCloseTo(209.2 - (at(0) - at(32)), 2);
  expect(data.filter(({ of }) => of === 'EV05')).toHaveLength(15);
  for (const { of, source } of data) if (of === 'EV05') expect(source).not.toBe('');
});
