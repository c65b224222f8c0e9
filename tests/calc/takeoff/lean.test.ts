import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { comparison } from '../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { ratesOf } from '../../../calc/prices/rates.ts';
import { bidSheet } from '../../../calc/sheets/cost/bid-sheet.ts';
import { costSheet } from '../../../calc/sheets/cost/cost-sheet.ts';
import { takeoffSheet } from '../../../calc/sheets/cost/takeoff-sheet.ts';
import { repetitionFactor } from '../../../calc/takeoff/bid/cost.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const rates = ratesOf(INVENTED_LIST.rates);
const [overhead, pedestals] = ['library-lot', 'library-pedestals'].map((name) =>
  alternativeOf(name, plannedSample(name).site, INVENTED_LIST),
) as [ReturnType<typeof alternativeOf>, ReturnType<typeof alternativeOf>];

describe('one lot overhead and from pedestals, compared without lean', () => {
  test('what is alike in both has one price, one count of hours and one system', () => {
    const of = new Map(overhead.cost.rows.map((row) => [`${row.item}, ${row.spec}`, row]));
    const alike = pedestals.cost.rows.filter(({ item, spec }) => of.has(`${item}, ${spec}`));
    expect(alike.length).toBeGreaterThan(10);
    for (const { item, spec, unitMaterial, unitHours, system, line } of alike)
      expect(of.get(`${item}, ${spec}`)).toMatchObject({ unitMaterial, unitHours, system, line });
  });
  test.each([overhead, pedestals])(
    'hours are quantity by height and repetition in $name, and nothing else',
    ({ cost }) => {
      for (const row of cost.rows) {
        const { quantity, ladder, lift, unit, unitHours, hours } = row;
        const alike = unit === 'each' ? repetitionFactor(quantity, rates.repetition, rates.alike) : 1;
        const worked = quantity - ladder - lift + ladder * rates.height + lift * rates.lift;
        expect(hours, row.item).toBeCloseTo(worked * unitHours * alike, 9);
        expect(row.system === 'ground' ? ladder + lift : 0, row.item).toBe(0);
      }
    },
  );
  test('a charger has one module and one cord in each, the pedestal its own', () => {
    const count = ({ cost }: typeof overhead, item: string): number =>
      cost.rows.reduce((sum, row) => sum + (row.item === item ? row.quantity : 0), 0);
    for (const one of [overhead, pedestals]) expect(count(one, 'charging module')).toBe(16);
    expect(count(overhead, 'cord')).toBe(16);
    expect(count(pedestals, 'cord') + count(pedestals, 'pedestal')).toBe(16);
  });
  test('is shown with what height adds and with the rows that are a guess', () => {
    const facts = new Map(comparison([overhead, pedestals]).map(({ fact, values }) => [fact, values]));
    expect(facts.get('items priced by a guess')).toEqual([0, 0]);
    const [high, low] = facts.get('labor that height adds') as [number, number];
    expect(high).toBeGreaterThan(low);
  });
});

/** What spreadsheets turn into a day: 1/2, 3-4, 1/2/26. */
const DAY = /^\d{1,2}[/-]\d{1,2}(?:[/-]\d{2,4})?$/;

test('no cell of the sheets of money and quantity is one that a spreadsheet takes for a day', () => {
  let cells = 0;
  for (const one of [overhead, pedestals])
    for (const sheet of [costSheet(one.site, one.cost), bidSheet(one), takeoffSheet(one.site, one.plan)])
      for (const cell of sheet.flat()) {
        if (typeof cell !== 'string') continue;
        cells++;
        expect(cell).not.toMatch(DAY);
      }
  expect(cells).toBeGreaterThan(500);
});
