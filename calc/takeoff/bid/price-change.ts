import { kept } from '../../../routing/kept/kept.ts';
import type { Raceway } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { racewaySpec } from '../../prices/spec.ts';
import type { Aloft } from '../high.ts';
import { GROUND_WORK } from '../systems.ts';
import { type CostSheet, costOf } from './cost.ts';

export interface PriceChange {
  /** Dollars with overhead and margin; less than 0 where the change saves. */
  readonly adds: number;
  /** Items that it adds, or adds to, and that the list has no price for. */
  readonly missing: readonly string[];
  /** Nothing but digging and drilling changes. */
  readonly groundOnly: boolean;
}

const GROUND: ReadonlySet<string> = new Set(GROUND_WORK);

/** What a change of the takeoff comes to by a price list. */
export function priceChange(before: readonly TakeoffRow[], after: readonly TakeoffRow[], list: PriceList): PriceChange {
  const [was, now] = [costOf(before.map(asUsed), byUse(list), 0), costOf(after.map(asUsed), byUse(list), 0)];
  const lacked = quantities(was.missing);
  const [counted, counts] = [quantities(before), quantities(after)];
  const changed = [...before, ...after].filter(
    (row) => Math.abs((counts.get(keyOf(row)) ?? 0) - (counted.get(keyOf(row)) ?? 0)) > LEAST,
  );
  return {
    adds: now.price - was.price,
    missing: now.missing.filter((row) => row.quantity > (lacked.get(keyOf(row)) ?? 0) + LEAST).map(keyOf),
    groundOnly: changed.every(({ item }) => GROUND.has(item)),
  };
}

/**
 * The price of a bill by its lengths alone, as if sticks and reels could be bought by the foot: it follows each foot of a
 * drag, where the price itself goes by whole sticks and reels and stands or leaps.
 */
export const usedPrice = kept(
  ({ rows, list }: CostSheet): number =>
    costOf(
      rows.map(({ taken }) => asUsed(taken)),
      list,
      0,
    ).price,
);

/** A row by its length, whatever sticks and reels it comes in. */
const asUsed = ({ item, spec, quantity, high, lift, unit, basis, of, parts }: TakeoffRow): TakeoffRow => ({
  item,
  spec,
  quantity,
  high,
  ...(lift !== undefined && { lift }),
  unit,
  basis,
  of,
  parts,
});

/** A list without what comes once with a job or by the whole day, so that a part of the work can be priced by itself. */
const byUse = kept(
  (list: PriceList): PriceList => ({
    ...list,
    rates: { ...list.rates, mobilization: 0, traffic: 0, trafficDay: 0, flaggers: 0, liftDay: 0 },
    allowances: [],
    quotes: [],
  }),
);

type Counted = Pick<TakeoffRow, 'item' | 'spec' | 'quantity'>;
const LEAST = 1e-6;
const keyOf = ({ item, spec }: Counted): string => `${item}, ${spec}`;
const quantities = (rows: readonly Counted[]): ReadonlyMap<string, number> =>
  new Map(rows.map((row) => [keyOf(row), row.quantity]));

/** Trade size that a raceway which carries nothing yet is priced at; a tray has none. */
export const EMPTY_SIZE = '3/4';

/**
 * What so many feet of raceway come to by a price list as one conduit with nothing in it, without fittings and
 * supports: dollars with overhead and margin, as much of it aloft as is said. Null where the list has no
 * price for it.
 */
export function emptyRacewayPrice(
  method: Raceway['method'],
  feet: number,
  aloft: Aloft,
  list: PriceList,
): number | null {
  const spec = racewaySpec(method, method === 'tray' ? null : EMPTY_SIZE);
  const row: TakeoffRow = { item: 'raceway', spec, quantity: feet, ...aloft, unit: 'ft', basis: '', of: [], parts: [] };
  const { price, missing } = costOf([row], byUse(list), 0);
  return missing.length > 0 ? null : price;
}
