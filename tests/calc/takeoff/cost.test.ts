import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { isGuess } from '../../../calc/prices/line-for.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { priceSheet } from '../../../calc/prices/price-sheet.ts';
import { readPrices } from '../../../calc/prices/read-prices.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const row = (item: string, spec: string, quantity: number, unit: string, high = 0): TakeoffRow => ({
  item,
  spec,
  quantity,
  high,
  unit,
  basis: '',
  of: [],
  parts: [],
});
const LIST: PriceList = {
  name: 'by hand',
  rows: [
    { item: 'conductor', spec: '8 AWG copper THWN-2', unit: 'ft', material: 0.5, hours: 0.01 },
    { item: 'raceway', spec: 'EMT 1 in', unit: 'ft', material: 2, hours: 0.05 },
    { item: 'panelboard', spec: '*', unit: 'each', material: 1000, hours: 10 },
  ],
  rates: { labor: 100, height: 1.2, overhead: 0.1, margin: 0.05 },
};

describe('cost by hand', () => {
  test('a foot of conductor overhead: material, and hours by the height factor', () => {
    // 200 ft: $100 of material; 200 x 0.01 x 1.2 = 2.4 hours at $100.
    const { rows } = costOf([row('conductor', '8 AWG copper THWN-2, black', 200, 'ft', 200)], LIST, 4);
    expect(rows[0]).toMatchObject({ material: 100, hours: 2.4, labor: 240, cost: 340, system: 'branches' });
  });
  test('the height factor is on what is worked off the ground alone', () => {
    // 50 of 200 ft up: (200 + 50 x 0.2) x 0.01 = 2.1 hours; none up: 2 hours.
    const hours = (high: number): number =>
      costOf([row('conductor', '8 AWG copper THWN-2, black', 200, 'ft', high)], LIST, 4).rows[0]!.hours;
    expect(hours(50)).toBeCloseTo(2.1, 12);
    expect(hours(0)).toBeCloseTo(2, 12);
  });
  test('overhead and margin, and the price a stall', () => {
    // A panel: 1000 + 10 x 100 = 2000; overhead 200; margin 5% of 2200 = 110.
    const sheet = costOf([row('panelboard', '400 A bus', 1, 'each')], LIST, 4);
    expect(sheet).toMatchObject({ cost: 2000, overhead: 200, margin: 110, price: 2310, pricePerStall: 577.5 });
  });
  test('what has no price is listed, not free', () => {
    const sheet = costOf([row('retractor', 'cord', 3, 'each')], LIST, 1);
    expect(sheet.missing).toMatchObject([{ item: 'retractor', spec: 'cord', quantity: 3, unit: 'each' }]);
    expect(sheet.cost).toBe(0);
  });
  test('a price for another unit is no price', () => {
    expect(costOf([row('raceway', 'EMT 1 in', 3, 'each')], LIST, 1).missing).toHaveLength(1);
  });
  test('material is that of what must be bought, hours those of what is put in', () => {
    // 30 ft out of four sticks: 40 ft at $2, and 30 ft x 0.05 hours.
    const bought = { quantity: 40, stock: 10, left: 10 };
    const { rows } = costOf([{ ...row('raceway', 'EMT 1 in', 30, 'ft'), bought }], LIST, 1);
    expect(rows[0]).toMatchObject({ quantity: 30, bought: 40, material: 80, hours: 1.5 });
  });
  test('sticks are not paid for twice', () => {
    const rows = [row('raceway', 'EMT 1 in', 30, 'ft'), row('raceway stick', 'EMT 1 in, 10 ft', 3, 'each')];
    expect(costOf(rows, LIST, 1)).toMatchObject({ missing: [], rows: [{ material: 60 }] });
  });
});

describe.each(['library-lot', 'fleet-yard', 'library-pedestals'])('the cost of %s', (name) => {
  const { planned } = plannedSample(name);
  const sheet = costOf(planned.takeoff, INVENTED_LIST, 16);
  test('is the sum of its rows and of its systems, to the cent', () => {
    const cents = (dollars: number): number => Math.round(dollars * 100);
    expect(sheet.rows.reduce((sum, { cost }) => sum + cents(cost), 0)).toBe(cents(sheet.cost));
    expect(Object.values(sheet.bySystem).reduce((sum, cost) => sum + cents(cost), 0)).toBe(cents(sheet.cost));
    for (const { material, labor, cost } of sheet.rows) expect(cents(material) + cents(labor)).toBe(cents(cost));
    const { additions, contingency, overhead, margin, bond } = sheet;
    const added = [...additions.map(({ dollars }) => dollars), contingency, overhead, margin, bond];
    expect(added.reduce((sum, dollars) => sum + cents(dollars), cents(sheet.cost))).toBe(cents(sheet.price));
  });
  test('leaves nothing out with the list that is there from the start', () => {
    expect(sheet.missing).toEqual([]);
  });
  test('stands on no line for any size', () => {
    expect(sheet.rows.filter(({ how }) => isGuess(how))).toEqual([]);
    expect(sheet.guesses).toBe(0);
  });
});

describe('a price list', () => {
  test('comes back as it was written', () => {
    const read = readPrices(csv(priceSheet(INVENTED_LIST)), INVENTED_LIST.name);
    expect(read).toEqual({ ok: true, list: INVENTED_LIST });
  });
  const rates =
    'rate,"labor, dollars an hour",,95,0\nrate,height factor on hours,,1,0\nrate,"overhead, share of cost",,0,0\nrate,"margin, share of cost and overhead",,0,0\n';
  const head = 'item,spec,unit,material,hours\n';
  test.each([
    ['item,spec,unit,material\n', 'line 1', /column "hours"/],
    [`${head}${rates}cord,*,each,cheap,1\n`, 'line 6, material', /"cheap"/],
    [`${head}${rates}cord,*,each,-1,1\n`, 'line 6, material', /0 or more/],
    [`${head}${rates}cord,*,dozen,1,1\n`, 'line 6, unit', /"dozen"/],
    [`${head}${rates}cord,*,each,,1\n`, 'line 6, material', /missing/],
    [`${head}${rates}cord,*,each,1,1\ncord,*,each,2,1\n`, 'line 7', /line 6 too/],
    [`${head}rate,constructor,,95,0\n`, 'line 2, spec', /no rate/],
    [head, '', /rate/],
  ])('%j is refused at its place', (text, place, says) => {
    const read = readPrices(text, 'x');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.errors.some((error) => error.place === place && says.test(error.says))).toBe(true);
  });
  test('survives any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const read = readPrices(`${head}${text}`, 'x');
        if (!read.ok) expect(read.errors.length).toBeGreaterThan(0);
      }),
    );
  });
});
