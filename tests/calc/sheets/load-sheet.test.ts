import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { loadSheet } from '../../../calc/sheets/schedules/load-sheet.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { changed, lotWith } from '../checks/faults/small-lot.ts';

/** Two chargers of 32 A at 208 V behind a panel of 200 A, beside 60 A that were measured. */
const LOT = toSite(lotWith({ equipment: changed('equipment', 'SVC', { existingAmps: 60 }) }));

test('each way of counting has a row, with its lines and its section', () => {
  const rows = loadSheet(LOT, plan(LOT));
  const of = (words: string) => rows.find(([, what]) => String(what).includes(words))!;
  expect(rows[0]).toContain('counted (VA)');
  expect(of('chargers of 32 A')).toEqual([
    'SVC',
    'chargers of 32 A at 208 V, single-phase',
    2,
    13_312,
    14_400,
    null,
    null,
    null,
    'NEC 2023 220.57',
  ]);
  // On AB and BC: 32 A, sqrt 3 x 32 = 55.4 A, 32 A.
  expect(of('connected load').slice(5, 8)).toEqual([32, 55.4, 32]);
  // 7,200 / 208 = 34.6 A a charger, 125%: 43.3, 74.9, 43.3 A; 75 A of measured demand beside them.
  expect(of('VA or more').slice(5, 8)).toEqual([43.3, 74.9, 43.3]);
  expect(of('measured demand: decides').slice(5, 8)).toEqual([118.3, 149.9, 118.3]);
  expect(of('the service fits')[1]).toBe('the service fits 200 A, 50 A left');
  expect(of('P1, 200 A')[1]).toContain('taken as the service equipment');
  expect(of('transformer to ask')[1]).toContain('45 kVA');
});
