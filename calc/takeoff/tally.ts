import type { Kind } from '../prices/kind.ts';

/** So much of an item in one element. */
export interface Part {
  /** Id of the element: a conduit, charger, drop, equipment, feeder. */
  readonly of: string;
  readonly quantity: number;
  /** The lengths that it is cut for from stock, feet; absent of what is not cut, and of one length that is all of it. */
  readonly cut?: readonly number[];
}

/** A quantity of one kind, before waste, with what it is made of. */
export interface Sum {
  readonly kind: Kind;
  readonly net: number;
  /** How much of it is worked off the ground. */
  readonly high: number;
  readonly parts: readonly Part[];
  readonly within: readonly Sum[];
}

/** Sums by kind. */
export type Tally = ReadonlyMap<Kind, Sum>;

/**
 * Adds a quantity of an element, how much of it is worked off the ground (none where that is not said), and the lengths
 * that it is cut for.
 */
export type Add = (kind: Kind, of: string, quantity: number, high?: number, cut?: readonly number[]) => void;

/** Collects quantities: `add` them one by one, then read `tally`. Nothing is kept of a quantity of 0. */
export function tallying(): { readonly add: Add; readonly tally: Tally } {
  const sums = new Map<Kind, { kind: Kind; net: number; high: number; parts: Part[]; within: readonly Sum[] }>();
  const add: Add = (kind, of, quantity, high = 0, cut) => {
    if (quantity === 0) return;
    const part: Part = cut === undefined || cut.length === 1 ? { of, quantity } : { of, quantity, cut };
    const sum = sums.get(kind);
    if (sum === undefined) {
      sums.set(kind, { kind, net: quantity, high, parts: [part], within: [] });
      return;
    }
    sum.net += quantity;
    sum.high += high;
    const last = sum.parts.at(-1)!;
    if (last.of === of) sum.parts[sum.parts.length - 1] = together(last, part);
    else sum.parts.push(part);
  };
  return { add, tally: sums };
}

/** Two parts of one element as one. */
function together(a: Part, b: Part): Part {
  const quantity = a.quantity + b.quantity;
  if (a.cut === undefined && b.cut === undefined) return { of: a.of, quantity };
  return { of: a.of, quantity, cut: [...(a.cut ?? [a.quantity]), ...(b.cut ?? [b.quantity])] };
}

/** Tallies added up, in their order. */
export function addedUp(tallies: readonly Tally[]): Tally {
  const total = new Map<Kind, { kind: Kind; net: number; high: number; parts: readonly Part[]; within: Sum[] }>();
  for (const tally of tallies) {
    for (const [kind, part] of tally) {
      const sum = total.get(kind);
      if (sum === undefined) total.set(kind, { kind, net: part.net, high: part.high, parts: [], within: [part] });
      else {
        sum.net += part.net;
        sum.high += part.high;
        sum.within.push(part);
      }
    }
  }
  return total;
}

/** Everything that a sum is made of, down to the element. */
export const partsOf = (sum: Sum): readonly Part[] =>
  sum.within.length === 0 ? sum.parts : sum.within.flatMap(partsOf);
