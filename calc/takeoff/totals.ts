import { kept } from '../../routing/kept/kept.ts';
import type { TakeoffRow } from '../plan-file/takeoff.ts';

/** What there is in all of one item, whatever its specification. */
export type ItemTotal = Pick<TakeoffRow, 'item' | 'unit' | 'quantity'>;

/** Quantities of the takeoff by item and unit, in the order in which the items first appear. */
export const itemTotals = kept((rows: readonly TakeoffRow[]): readonly ItemTotal[] => {
  const sums = new Map<string, { item: string; unit: string; quantity: number }>();
  for (const { item, unit, quantity } of rows) {
    const key = JSON.stringify([item, unit]);
    const so = sums.get(key);
    if (so) so.quantity += quantity;
    else sums.set(key, { item, unit, quantity });
  }
  return [...sums.values()];
});

/** A length that summaries give, the same wherever it is named: which items of the takeoff it adds up. */
export interface SummedLength {
  readonly name: string;
  /** What is in it. */
  readonly says: string;
  readonly items: readonly string[];
}

export const SUMMED_LENGTHS = {
  branchConductors: {
    name: 'branch conductors with waste',
    says: 'lines, grounding and pilot conductors of all branches, allowances at their ends and waste in',
    items: ['conductor', 'grounding conductor', 'pilot conductor'],
  },
  feederConductors: {
    name: 'feeder conductors with waste',
    says: 'lines, neutrals, grounding and bonding conductors of new feeders, allowances at their ends and waste in',
    items: ['feeder conductor', 'feeder grounding conductor', 'feeder bonding conductor'],
  },
  branchRaceway: { name: 'branch raceway with waste', says: 'conduits of all branches, waste in', items: ['raceway'] },
  trench: { name: 'trench', says: 'plan length of what is dug, shared trenches once', items: ['trench'] },
} as const satisfies Readonly<Record<string, SummedLength>>;

/** A summed length of a takeoff, feet. */
export const summedLength = (rows: readonly TakeoffRow[], { items }: SummedLength): number =>
  itemTotals(rows).reduce((sum, { item, quantity }) => sum + (items.includes(item) ? quantity : 0), 0);
