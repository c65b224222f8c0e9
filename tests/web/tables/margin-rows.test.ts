import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { leastMargin, MARGIN_KINDS, marginsOf } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { marginRows } from '../../../web/tables/margin-rows.ts';

function sample(name: string): Site {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new Error('the sample is not valid');
  return toSite(read.file);
}

const hospital = sample('hospital-lot');
const worked = plan(hospital);
const rows = marginRows(worked, hospital);

test('every charger has one row', () => {
  expect(rows.map(({ margins }) => margins.charger).sort()).toEqual(hospital.chargers.map(({ id }) => id).sort());
});

test('the rows go from the worst to the best, those without a run first', () => {
  for (let i = 1; i < rows.length; i++) expect(rows[i - 1]!.worst).toBeLessThanOrEqual(rows[i]!.worst);
  const without = new Set(worked.runs.filter(({ length }) => length === null).map(({ charger }) => charger));
  expect(without.size).toBeGreaterThan(0);
  const first = rows.slice(
    0,
    rows.findIndex(({ worst }) => worst > Number.NEGATIVE_INFINITY),
  );
  for (const charger of without) expect(first.map(({ margins }) => margins.charger)).toContain(charger);
});

test('every charger that the plan fails for a margin stands before every one that has all three', () => {
  const failing = rows.filter(({ margins }) => MARGIN_KINDS.some((kind) => (margins[kind]?.left ?? -1) < 0));
  expect(failing.length).toBeGreaterThan(2);
  expect(rows.slice(0, failing.length)).toEqual(failing);
});

test('the worst charger of each kind in the ledger is among the rows with the same figure', () => {
  const margins = marginsOf(worked, hospital);
  for (const kind of MARGIN_KINDS) {
    const worst = leastMargin(margins, kind)!;
    const row = rows.find((each) => each.margins.charger === worst.charger)!;
    expect(row.margins[kind]).toBe(worst[kind]);
    expect(row.drop).toBe(hospital.chargers.find(({ id }) => id === worst.charger)!.drop);
  }
});

test('stalls are named as they are painted', () => {
  const library = sample('library-lot');
  const row = marginRows(plan(library), library).find(({ margins }) => margins.charger === 'EV07')!;
  expect(row.stalls).toBe('07');
});
