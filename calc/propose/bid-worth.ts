import type { TakeoffRow } from '../plan-file/takeoff.ts';
import { INVENTED_LIST } from '../prices/invented-list.ts';
import type { PriceList } from '../prices/price-list.ts';
import { type BillSums, bidOf, bidWeights } from '../takeoff/bid/bid.ts';
import { type CostSheet, costOf } from '../takeoff/bid/cost.ts';
import { sumOf } from '../takeoff/bid/money.ts';

/** Sums of a takeoff by a list; what it has no price for by the invented one. */
export function billOf(rows: readonly TakeoffRow[], prices: PriceList): BillSums {
  const sheet = costOf(rows, prices, 0);
  if (sheet.missing.length === 0) return sumsOf(sheet);
  const lacks = new Set(sheet.missing.map(({ item, spec }) => `${item}\n${spec}`));
  const rest = costOf(
    rows.filter(({ item, spec }) => lacks.has(`${item}\n${spec}`)),
    INVENTED_LIST,
    0,
  );
  return billSum(sumsOf(sheet), sumsOf(rest));
}

function sumsOf({ material, labor, liftHours, rows }: CostSheet): BillSums {
  const groundHours = rows.reduce((sum, row) => sum + (row.system === 'ground' ? row.hours : 0), 0);
  return { material, labor, liftHours, groundHours };
}

/** Two bills as one, or the one without the other. */
export const billSum = (a: BillSums, b: BillSums, sign: 1 | -1 = 1): BillSums => ({
  material: sumOf([a.material, sign * b.material]),
  labor: sumOf([a.labor, sign * b.labor]),
  liftHours: a.liftHours + sign * b.liftHours,
  groundHours: a.groundHours + sign * b.groundHours,
});

/** Dollars of the bid of a takeoff: what a customer pays. Lifts and traffic control by whole days. */
export const bidOfRows = (rows: readonly TakeoffRow[], prices: PriceList): number =>
  bidOf(billOf(rows, prices), prices).price;

/**
 * Dollars that a bill adds to a bid, all that is laid on it included, but for what comes with any job: lifts and traffic
 * control by parts of their days, so that what saves an hour of them is worth it before it saves a day.
 */
export function worthOf({ material, labor, liftHours, groundHours }: BillSums, prices: PriceList): number {
  const by = bidWeights(prices);
  return material * by.material + labor * by.labor + liftHours * by.liftHour + groundHours * by.groundHour;
}

/** Dollars that the rows of a takeoff add to a bid. */
export const worthOfRows = (rows: readonly TakeoffRow[], prices: PriceList): number =>
  worthOf(billOf(rows, prices), prices);
