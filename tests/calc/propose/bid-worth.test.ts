import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { worthOf } from '../../../calc/propose/bid-worth.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { type BillSums, bidOf, bidWeights } from '../../../calc/takeoff/bid/bid.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows } from './hand/lots.ts';

const rated = (rates: Partial<PriceList['rates']>): PriceList => ({
  ...INVENTED_LIST,
  rates: { ...INVENTED_LIST.rates, ...rates },
});

describe('what a bill is worth in a bid', () => {
  const bills = fc.record({
    material: fc.integer({ min: 100_000, max: 9_000_000 }).map((cents) => cents / 100),
    labor: fc.integer({ min: 100_000, max: 9_000_000 }).map((cents) => cents / 100),
    liftHours: fc.integer({ min: 0, max: 60 }),
    groundHours: fc.integer({ min: 0, max: 60 }),
  });
  const { liftHours: liftDay, trafficHours: trafficDay } = INVENTED_LIST.rates as {
    liftHours: number;
    trafficHours: number;
  };
  const days = (bill: BillSums): BillSums => ({
    ...bill,
    liftHours: bill.liftHours * liftDay,
    groundHours: bill.groundHours * trafficDay,
  });
  const price = (bill: BillSums): number => bidOf(bill, INVENTED_LIST).price;

  test('is all of the price that one bill has more than another, where hours make whole days', () => {
    fc.assert(
      fc.property(bills, bills, (a, b) => {
        const more = worthOf(days(a), INVENTED_LIST) - worthOf(days(b), INVENTED_LIST);
        // A cent for each line that is rounded.
        expect(Math.abs(price(days(a)) - price(days(b)) - more)).toBeLessThan(0.2);
      }),
    );
  });

  test('and is less than a day of a lift and of traffic control off where they do not', () => {
    const by = bidWeights(INVENTED_LIST);
    const most = by.liftHour * liftDay + by.groundHour * trafficDay;
    const fixed = price({ material: 1, labor: 0, liftHours: 0, groundHours: 0 }) - by.material;
    fc.assert(
      fc.property(bills, (bill) => {
        const over = price(bill) - fixed - worthOf(bill, INVENTED_LIST);
        expect(over).toBeGreaterThan(-0.2);
        expect(over).toBeLessThan(most + 0.2);
      }),
    );
  });
});

/** Four stalls under steel two feet higher than usual: past the reach of a ladder, though drops may hang within it. */
function underHighSteel(): SiteFile {
  const lot = doubleRows({ along: 2, canopies: 1, volts: 208, away: 40 });
  const UP = 2;
  return {
    ...lot,
    columns: lot.columns!.map((one) => ({ ...one, height: one.height! + UP })),
    members: lot.members!.map((one) => ({
      ...one,
      from: [one.from[0], one.from[1], one.from[2] + UP],
      to: [one.to[0], one.to[1], one.to[2] + UP],
    })),
  };
}

test('of two layouts that the sum of rows and the bid rank differently the one with the cheaper bid is proposed', () => {
  // Dear rods, and hours from a lift as good as from a ladder: by its rows a drop is cheapest right under the steel.
  const { height } = INVENTED_LIST.rates;
  const rows = INVENTED_LIST.rows.map((row) => (row.item === 'threaded rod' ? { ...row, material: 8 } : row));
  const byTheDay: PriceList = { ...rated({ lift: height }), rows };
  const noDays: PriceList = { ...rated({ lift: height, liftDay: 0, trafficDay: 0, flaggers: 0 }), rows };
  const [low, high] = [byTheDay, noDays].map((prices) => {
    const { file } = propose(underHighSteel(), { what: 'all', cordsADrop: 1, prices, answers: 0 });
    const { takeoff } = plan(toSite(file));
    return { heights: new Set(file.drops!.map(({ box }) => box[2])), ...costOf(takeoff, byTheDay, 0) };
  });
  expect([low!.heights, high!.heights]).toEqual([new Set([12]), new Set([13])]);
  expect(high!.cost).toBeLessThan(low!.cost);
  expect(low!.price).toBeLessThan(high!.price);
});
