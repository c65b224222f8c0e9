import { remembered } from '../memo.ts';
import type { TakeoffRow } from '../plan-shape.ts';

/** What there is in all of one item, whatever its specification. */
export type ItemTotal = Pick<TakeoffRow, 'item' | 'unit' | 'quantity'>;

/** Quantities of the takeoff by item and unit, in the order in which the items first appear. */
export const itemTotals = remembered((rows: readonly TakeoffRow[]): readonly ItemTotal[] => {
  const sums = new Map<string, { item: string; unit: string; quantity: number }>();
  for (const { item, unit, quantity } of rows) {
    const key = JSON.stringify([item, unit]);
    const so = sums.get(key);
    if (so) so.quantity += quantity;
    else sums.set(key, { item, unit, quantity });
  }
  return [...sums.values()];
});
