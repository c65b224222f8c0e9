import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { takeoffSheet } from '../../../calc/sheets/cost/takeoff-sheet.ts';
import { runsSheet } from '../../../calc/sheets/schedules/runs-sheet.ts';
import { CAUTIONS } from '../../../calc/words/cautions.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
if (!read.ok) throw new Error('the sample is not valid');
const site = toSite(read.file);
const worked = plan(site);

test('the sheet of runs has a row for each charger, each as wide as its head, and the cautions under them', () => {
  const [head, ...rows] = runsSheet(site, worked);
  const runs = rows.slice(0, worked.runs.length);
  expect(runs.map(([charger]) => charger)).toEqual(worked.runs.map(({ charger }) => charger));
  for (const row of runs) expect(row).toHaveLength(head!.length);
  expect(rows.at(-1)).toEqual([CAUTIONS]);
});

test('what is spare is the limit less what is used', () => {
  const [head, ...rows] = runsSheet(site, worked);
  const column = (name: string): number => head!.indexOf(name);
  for (const row of rows.slice(0, worked.runs.length)) {
    const at = (name: string): number => row[column(name)] as number;
    expect(at('branch spare (ft)')).toBeCloseTo(at('branch limit (ft)') - at('conductor length (ft)'), 3);
    expect(at('cord spare (ft)')).toBeCloseTo(at('cord available (ft)') - at('cord needed (ft)'), 3);
  }
});

test('a metric site has its quantities in metres', () => {
  const feet = takeoffSheet({ units: 'ft' }, worked);
  const metres = takeoffSheet({ units: 'm' }, worked);
  feet.forEach((row, i) => {
    if (row[3] !== 'ft') return;
    expect(metres[i]![3]).toBe('m');
    // Whole feet and tenths of a meter, each of the same length.
    const { quantity } = worked.takeoff[i - 1]!;
    expect(row[2]).toBe(quantity < 1 ? Number(quantity.toFixed(1)) : Math.round(quantity));
    expect(metres[i]![2]).toBe(Number((quantity * 0.3048).toFixed(1)));
  });
  expect(feet.some((row) => row[3] === 'ft')).toBe(true);
});
