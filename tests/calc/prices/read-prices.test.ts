import { describe, expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { lineFor } from '../../../calc/prices/line-for.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { priceSheet } from '../../../calc/prices/price-sheet.ts';
import { amountIn, dayIn, unitIn } from '../../../calc/prices/read-cells.ts';
import { readPrices } from '../../../calc/prices/read-prices.ts';
import { csv } from '../../../calc/sheets/csv.ts';

const RATES =
  'rate,"labor, dollars an hour",,95,0\nrate,height factor on hours,,1,0\nrate,"overhead, share of cost",,0,0\nrate,"margin, share of cost and overhead",,0,0\n';
const HEAD = 'item,spec,unit,material,hours\n';
const read = (text: string, over?: PriceList): PriceList => {
  const found = readPrices(text, 'own.csv', over);
  if (!found.ok) throw new Error(JSON.stringify(found.errors));
  return found.list;
};
const faults = (text: string, over?: PriceList) => {
  const found = readPrices(text, 'own.csv', over);
  return found.ok ? [] : found.errors.map(({ place, says }) => `${place}: ${says}`);
};

test.each([
  ['$1,234.50', 1234.5],
  ['1234.5', 1234.5],
  ['€ 12', 12],
  ['USD 7', 7],
  ['1e3', 1000],
  ['0', 0],
  ['1,23', null],
  ['cheap', null],
  ['', null],
  ['$', null],
  ['12 $ 3', null],
  ['0x10', null],
])('the amount %j', (words, value) => {
  expect(amountIn(words)).toBe(value);
});

test.each([
  ['each', 'each', 1],
  ['EA', 'each', 1],
  ['ft', 'ft', 1],
  ['LF', 'ft', 1],
  ['C', null, 100],
  ['M', null, 1000],
  ['/C', null, 100],
  ['per 100 ft', 'ft', 100],
  ['MFT', 'ft', 1000],
  ['C ea', 'each', 100],
  ['per 1,000 feet', 'ft', 1000],
])('the unit %j', (words, unit, of) => {
  expect(unitIn(words)).toEqual({ unit, of });
});
test.each(['dozen', '', 'constructor', 'C of', 'Cyard'])('%j is no unit', (words) => {
  expect(unitIn(words)).toBeNull();
});

test.each([
  ['2026-12-31', '2026-12-31'],
  ['12/31/2026', '2026-12-31'],
  ['2028-02-29', '2028-02-29'],
  ['2026-02-29', null],
  ['31/12/2026', null],
  ['soon', null],
])('the day %j', (words, day) => {
  expect(dayIn(words)).toBe(day);
});

describe("a supplier's list", () => {
  const SUPPLIERS = [
    'Net price,Per,Notes,Size,Description',
    '"$412.00",M,,14 AWG copper THWN-2,conductor',
    '$95.00,C ft,in stock,EMT 3/4 in,raceway',
    '61.25,C,,EMT 3/4 in,coupling',
    '"$18,750.00",ea,,at 1200 A bus,switchboard',
  ].join('\n');
  const list = read(SUPPLIERS, INVENTED_LIST);
  const of = (item: string, spec: string, unit: string) => lineFor(list.rows, item, spec, unit)!;
  test('in any order of columns, by the hundred and thousand, is laid over the list in use', () => {
    expect(of('conductor', '14 AWG copper THWN-2, black', 'ft').material).toBeCloseTo(0.412, 12);
    expect(of('raceway', 'EMT 3/4 in', 'ft').material).toBeCloseTo(0.95, 12);
    expect(of('coupling', 'EMT 3/4 in', 'each').material).toBeCloseTo(0.6125, 12);
    expect(of('switchboard', '1200 A bus', 'each').material).toBe(18_750);
    expect(list.name).toBe('own.csv, else invented prices');
  });
  test('leaves hours, rates and what it does not price', () => {
    const before = (item: string, spec: string, unit: string) => lineFor(INVENTED_LIST.rows, item, spec, unit)!;
    expect(of('raceway', 'EMT 3/4 in', 'ft').hours).toBe(before('raceway', 'EMT 3/4 in', 'ft').hours);
    expect(of('raceway', 'EMT 1 in', 'ft')).toEqual(before('raceway', 'EMT 1 in', 'ft'));
    expect(list.rates).toBe(INVENTED_LIST.rates);
    expect(list.rows).toHaveLength(INVENTED_LIST.rows.length);
  });
  test('has its faults told by line', () => {
    const text = `${SUPPLIERS}\n$4.1.2,ea,,x,raceway\n5,dozen,,EMT 1 in,strap\n5,C,,,widget`;
    expect(faults(text, INVENTED_LIST)).toEqual([
      'line 6, material: expected a number of 0 or more, got "$4.1.2"',
      'line 7, unit: expected ft, each, C or M, got "dozen"',
    ]);
    // Words that are not known may be by the hundred of what is not said; in an own list they may not.
    expect(faults(`${HEAD}${RATES}widget,a,C,5,0\n`)).toEqual(['line 6, unit: "C" of what? Write C ft or C each']);
  });
  test('has an own list stand by itself', () => {
    expect(read(`${HEAD}${RATES}cord,*,each,1,1\n`, INVENTED_LIST).rows).toHaveLength(1);
  });
});

describe('crew, quotes, allowances and exclusions', () => {
  const without = RATES.split('\n').slice(1).join('\n');
  const WHOLE = [
    'item,spec,unit,material,hours,covers,valid until',
    ...without.trim().split('\n'),
    'rate,"burden, share of wages",,0.4,0',
    'crew,foreman,hour,50,1',
    'crew,journeyman,hour,40,3',
    'quote,gear package,lump,"$48,200",,"switchboard; panelboard, 400 A bus",12/31/2026',
    'allowance,signs,lump,2500,',
    'exclusion,rock,,0,',
    'bid day,12/1/2026,,0,',
    'cord,*,each,1,1',
  ].join('\n');
  test('are read, and come back as they were written', () => {
    const list = read(WHOLE);
    // (50 + 3 x 40) / 4 = 42.50, and 40% on it.
    expect(list.rates.labor).toBe(59.5);
    expect(list.quotes).toEqual([
      {
        name: 'gear package',
        material: 48_200,
        covers: ['switchboard', 'panelboard, 400 A bus'],
        validUntil: '2026-12-31',
      },
    ]);
    expect(list.allowances).toEqual([{ name: 'signs', dollars: 2500 }]);
    expect([list.exclusions, list.bidDay]).toEqual([['rock'], '2026-12-01']);
    expect(readPrices(csv(priceSheet(list)), list.name)).toEqual({ ok: true, list });
  });
  test('are refused at their place', () => {
    expect(faults(`${WHOLE}\nquote,cords,lump,5,,,soon`)).toEqual([
      'line 13, covers: expected the items that the quote covers, with ; between them',
      'line 13, valid until: expected a day such as 2026-12-31, got "soon"',
    ]);
    expect(faults(`${HEAD}${RATES}bid day,tomorrow,,0,0\n`)).toEqual([
      'line 6, spec: expected a day such as 2026-12-31, got "tomorrow"',
    ]);
    expect(faults(`${HEAD}${RATES}crew,foreman,hour,50,1\n`)).toEqual([
      ': the crew gives the rate "labor, dollars an hour"; take one of them out',
    ]);
  });
});
