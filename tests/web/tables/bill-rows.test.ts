import { describe, expect, test } from 'vitest';
import {
  isByHand,
  withAllowances,
  withBidDay,
  withCrew,
  withExclusions,
  withLine,
  withQuotes,
  withRate,
} from '../../../calc/prices/edit-list.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { lineFor } from '../../../calc/prices/line-for.ts';
import { priceSheet } from '../../../calc/prices/price-sheet.ts';
import { readPrices } from '../../../calc/prices/read-prices.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import { sumOf } from '../../../calc/takeoff/bid/money.ts';
import { billRows } from '../../../web/tables/bill-rows.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const { planned } = plannedSample('library-lot');
const list = {
  ...INVENTED_LIST,
  rows: [
    ...INVENTED_LIST.rows.filter(({ item }) => item !== 'retractor' && item !== 'label'),
    { item: 'label', spec: '*', unit: 'each', material: 2, hours: 0.1 } as const,
  ],
};
const sheet = costOf(planned.takeoff, list, 16);

describe('the bill', () => {
  test('has what is unpriced first, then what is guessed, both open; then the systems, closed', () => {
    const rows = billRows(sheet, new Set());
    expect(
      rows
        .slice(0, 4)
        .map((row) => (row.kind === 'group' ? row.name : row.kind === 'element' ? row.part.of : row.row.item)),
    ).toEqual(['no price: 1', 'retractor', 'on a guess: 1, summed below', 'label']);
    expect(rows.slice(4).every(({ kind }) => kind === 'group')).toBe(true);
  });
  test('opens from system to line to element, and the elements are the line', () => {
    const drops = billRows(sheet, new Set(['drops']));
    const module = drops.find((row) => row.kind === 'line' && row.row.item === 'charging module')!;
    expect(drops.filter((row) => row.kind === 'line' && row.key.startsWith('drops')).length).toBeGreaterThan(2);
    const opened = billRows(sheet, new Set(['drops', module.key]));
    const parts = opened.flatMap((row) => (row.kind === 'element' ? [row.part] : []));
    expect(parts.map(({ of }) => of)).toContain('EV01');
    expect(parts).toHaveLength(16);
    if (module.kind === 'line')
      expect(sumOf(parts.flatMap(({ material, labor }) => [material, labor]))).toBe(module.row.cost);
    expect(new Set(opened.map(({ key }) => key)).size).toBe(opened.length);
  });
  test('has every system that costs, with sums that are the bill', () => {
    const costs = billRows(sheet, new Set()).flatMap((row) => (row.kind === 'group' ? [row.cost ?? 0] : []));
    expect(sumOf(costs)).toBe(sheet.cost);
  });
});

describe('a list that is changed by hand', () => {
  const of = (from: typeof INVENTED_LIST, item: string, spec: string, unit: string) =>
    lineFor(from.rows, item, spec, unit)!;
  test('has a line of its own for the item, once for every color, and is kept as a file', () => {
    const line = {
      item: 'conductor',
      spec: '8 AWG copper THWN-2, black',
      unit: 'ft',
      material: 0.99,
      hours: 0.02,
    } as const;
    const changed = withLine(INVENTED_LIST, line);
    expect(of(changed, 'conductor', '8 AWG copper THWN-2, red', 'ft')).toMatchObject({ material: 0.99, hours: 0.02 });
    expect(changed.rows).toHaveLength(INVENTED_LIST.rows.length);
    const gear = withLine(changed, {
      item: 'panelboard',
      spec: '400 A bus, 208 V',
      unit: 'each',
      material: 1,
      hours: 2,
    });
    expect(of(gear, 'panelboard', '400 A bus, 208 V', 'each')).toMatchObject({ material: 1, how: 'one' });
    expect(gear.name).toBe('own prices, else invented prices');
    expect(readPrices(csv(priceSheet(gear)), gear.name)).toEqual({ ok: true, list: gear });
  });
  test('has quotes, allowances and exclusions of its own, and a day of the bid', () => {
    const quote = { name: 'gear', material: 5, covers: ['panelboard', 'breaker'], validUntil: '2026-12-31' };
    const quoted = withQuotes(INVENTED_LIST, [quote]);
    const allowed = withAllowances(quoted, [{ name: 'signs, wayfinding', dollars: 12.5 }]);
    const list = withBidDay(withExclusions(allowed, ['=SUM(A1)', 'rock; and "water"']), '2027-01-01');
    expect(isByHand(list)).toBe(true);
    expect(readPrices(csv(priceSheet(list)), list.name)).toEqual({ ok: true, list });
    const { bidDay: _, ...without } = list;
    expect(withBidDay(list, undefined)).toEqual(without);
    // What stands on a quote that ran out comes before the systems, open.
    const rows = billRows(costOf(planned.takeoff, list, 16), new Set());
    const first = rows[0]!;
    expect(first.kind === 'group' && first.name).toMatch(/^on a quote that ran out: \d+, summed below$/);
    expect(rows[1]!.kind).toBe('line');
  });
  test('has an own labor rate in place of the crew, or a crew that gives it', () => {
    expect(withRate(INVENTED_LIST, 'burden', 1).rates.labor).toBeCloseTo(126.67, 9);
    const own = withRate(INVENTED_LIST, 'labor', 80);
    expect([own.rates.labor, own.crew]).toEqual([80, undefined]);
    const crew = withCrew(own, [{ trade: 'journeyman', wage: 60, count: 2 }]);
    expect(crew.rates.labor).toBe(90);
    expect(isByHand(own)).toBe(true);
    expect(isByHand(INVENTED_LIST)).toBe(false);
    expect(withRate({ ...own, name: 'my.csv' }, 'tax', 0).name).toBe('my.csv, changed by hand');
    for (const one of [own, crew]) expect(readPrices(csv(priceSheet(one)), one.name)).toEqual({ ok: true, list: one });
  });
});
