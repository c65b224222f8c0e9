import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pricedOf } from '../../../calc/plan/compared/alternative.ts';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { priceStanding } from '../../../calc/sheets/cost/cost-sheet.ts';
import { bidOf, wholeDays } from '../../../calc/takeoff/bid/bid.ts';
import { costOf, doubtOf, quotedRows, repetitionFactor } from '../../../calc/takeoff/bid/cost.ts';
import { cents, dealtOut, sumOf } from '../../../calc/takeoff/bid/money.ts';
import { siteOf } from '../../routing/network/sites.ts';

const row = (item: string, quantity: number, unit: string, up: { high?: number; lift?: number } = {}): TakeoffRow => ({
  item,
  spec: 's',
  quantity,
  high: 0,
  unit,
  basis: '',
  of: [],
  parts: [],
  ...up,
});
const RATES = { labor: 100, height: 1.2, overhead: 0.1, margin: 0.05 };
const LIST: PriceList = {
  name: 'by hand',
  rows: [
    { item: 'board', spec: 's', unit: 'each', material: 1000, hours: 10 },
    { item: 'pipe', spec: 's', unit: 'ft', material: 2, hours: 0.1 },
    { item: 'box', spec: 's', unit: 'each', material: 10, hours: 0.5 },
  ],
  rates: RATES,
};

describe('a bid by hand', () => {
  test('lays each rate on what it is a share of', () => {
    const rates = {
      ...RATES,
      tax: 0.08,
      freight: 0.02,
      consumables: 0.01,
      tools: 0.03,
      liftDay: 200,
      liftHours: 16,
      permits: 0.02,
      mobilization: 500,
      traffic: 300,
      contingency: 0.05,
      bond: 0.01,
    };
    const bid = bidOf(
      { material: 1000, labor: 2000, liftHours: 17, groundHours: 10 },
      {
        ...LIST,
        rates,
        allowances: [{ name: 'signs', dollars: 250 }],
      },
    );
    // Tax 80, freight 20, consumables 10, tools 60, lift 2 days 400: 3,570; permits 2% of it 71.40; 500; 300; 250.
    expect(bid.additions.map(({ dollars }) => dollars)).toEqual([80, 20, 10, 60, 400, 71.4, 500, 300, 0, 250]);
    expect(bid.direct).toBe(4691.4);
    // 5%: 234.57; 10% of 4,925.97: 492.60; 5% of 5,418.57: 270.93; 1% of 5,689.50: 56.90 (56.895).
    expect(bid).toMatchObject({ contingency: 234.57, overhead: 492.6, margin: 270.93, bond: 56.9, price: 5746.4 });
  });
  test('without work there is none', () => {
    const rates = { ...RATES, mobilization: 500, traffic: 300 };
    expect(costOf([], { ...LIST, rates }, 0).price).toBe(0);
  });
  test('traffic is led on each day that is dug or that a lift is there, by so many flaggers', () => {
    const rates = {
      ...RATES,
      liftHours: 16,
      trafficHours: 24,
      trafficDay: 80,
      flaggers: 2,
      flagger: 50,
      flaggerHours: 8,
    };
    const led = (liftHours: number, groundHours: number) => {
      const { additions, trafficDays } = bidOf(
        { material: 1000, labor: 1000, liftHours, groundHours },
        { ...LIST, rates },
      );
      return [trafficDays, additions.find(({ rate }) => rate === 'trafficDay')!.dollars];
    };
    // A day is 80 and 2 x 8 x 50: 880. 17 h on a lift are 2 days, 50 h of digging 3.
    expect([led(0, 0), led(17, 0), led(0, 50), led(17, 50)]).toEqual([
      [0, 0],
      [2, 1760],
      [3, 2640],
      [5, 4400],
    ]);
  });
  test('a lift is there for whole days', () => {
    expect([0, 0.1, 16, 16.01, 33].map((hours) => wholeDays(hours, 16))).toEqual([0, 1, 1, 2, 3]);
  });
});

describe('hours', () => {
  test('of grade, ladder and lift each by their factor', () => {
    // 100 ft: 40 at grade, 35 from a ladder x 1.2, 25 from a lift x 1.5: 119.5 x 0.1.
    const list = { ...LIST, rates: { ...RATES, lift: 1.5 } };
    const { rows, liftHours } = costOf([row('pipe', 100, 'ft', { high: 60, lift: 25 })], list, 0);
    expect(rows[0]).toMatchObject({ ladder: 35, lift: 25 });
    expect(rows[0]!.hours).toBeCloseTo(11.95, 9);
    expect(liftHours).toBeCloseTo(3.75, 9);
  });
  test('of pieces alike by the learning curve: twice as many take the share of the average, to nothing but pieces', () => {
    expect(repetitionFactor(20, 0.9, 20)).toBe(1);
    expect(repetitionFactor(40, 0.9, 20)).toBeCloseTo(0.9, 12);
    expect(repetitionFactor(160, 0.9, 20)).toBeCloseTo(0.9 ** 3, 12);
    const list = { ...LIST, rates: { ...RATES, repetition: 0.9, alike: 20 } };
    const { rows } = costOf([row('box', 40, 'each'), row('pipe', 40, 'ft')], list, 0);
    expect(rows.map(({ hours }) => hours)).toEqual([40 * 0.5 * 0.9, 4]);
  });
});

describe('a quote', () => {
  const quoted = (covers: readonly string[], material = 900): PriceList => ({
    ...LIST,
    quotes: [{ name: 'gear', material, covers, validUntil: '2026-12-31' }],
  });
  const job = [row('board', 1, 'each'), row('box', 20, 'each'), row('pipe', 10, 'ft')];
  test('is the material of what it covers, whose hours stay', () => {
    const sheet = costOf(job, quoted(['board', 'box, s']), 0);
    // 1,000 and 200 by the list: 5/6 and 1/6 of 900.
    expect(sheet.rows.map(({ material, how }) => [material, how])).toEqual([
      [750, 'quote'],
      [150, 'quote'],
      [20, 'one'],
    ]);
    expect(sheet.hours).toBe(21);
    expect(sheet.quotes).toMatchObject([{ name: 'gear', validUntil: '2026-12-31', standing: 'no day of the bid' }]);
    expect([sheet.expired, quotedRows(sheet, { name: 'gear' })]).toEqual([0, 2]);
  });
  test('for what the job has not costs nothing', () => {
    expect(costOf(job, quoted(['crane']), 0)).toMatchObject({ material: 1220, quotes: [] });
  });
  test.each([
    ['2026-12-31', 'holds', 0],
    ['2027-01-01', 'ran out', 2],
  ])('on %s %s, and its rows are told', (bidDay, standing, expired) => {
    const sheet = costOf(job, { ...quoted(['board', 'box']), bidDay }, 0);
    expect([sheet.quotes[0]!.standing, sheet.expired, sheet.bidDay]).toEqual([standing, expired, bidDay]);
    expect(sheet.rows.map(doubtOf).filter((doubt) => doubt === 'quote ran out')).toHaveLength(expired);
    // A word to the estimator; the price is the quote's all the same.
    expect(sheet.rows[0]!.how).toBe('quote');
    expect(priceStanding(sheet).join(' ')).toContain(expired > 0 ? 'gear RAN OUT' : 'valid until 2026-12-31');
  });
  test('is held against the latest issue of the project where the list has no day', () => {
    const site = (issues: readonly { mark: string; date: string; text: string }[]) =>
      siteOf({ project: { issues: [...issues] } });
    const by = (list: PriceList, ...days: readonly string[]) =>
      pricedOf(job, site(days.map((date, i) => ({ mark: String(i), date, text: 'x' }))), list).bidDay;
    expect(by(LIST)).toBeNull();
    expect(by(LIST, '2026-11-01', '1/15/2027', 'soon')).toBe('2027-01-15');
    expect(by({ ...LIST, bidDay: '2026-12-01' }, '2027-01-15')).toBe('2026-12-01');
  });
  test('prices what no line does', () => {
    expect(costOf([row('crane', 1, 'each')], quoted(['crane']), 0)).toMatchObject({ missing: [], material: 900 });
  });
});

describe('cents', () => {
  test('round halves away from zero, as they are written', () => {
    expect([1.005, 2.675, -1.005, 56.895, 0.004, -0.004].map(cents)).toEqual([1.01, 2.68, -1.01, 56.9, 0, 0]);
  });
  test('an amount that is dealt out is there again', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -10_000_000, max: 10_000_000 }),
        fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (all, weights) => {
          const shares = dealtOut(all / 100, weights);
          expect(sumOf(shares)).toBe(all / 100);
          const whole = weights.reduce((sum, weight) => sum + weight, 0);
          if (whole > 0)
            shares.forEach((share, i) => {
              expect(Math.abs(share * 100 - (all * weights[i]!) / whole)).toBeLessThanOrEqual(1.001);
            });
        },
      ),
    );
  });
});
