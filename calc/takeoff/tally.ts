import type { Kind } from '../prices/kind.ts';
import { type Aloft, ON_GROUND, plus } from './high.ts';

/** So much of an item in one element. */
export interface Part {
  /** Id of the element: a conduit, charger, drop, equipment, feeder. */
  readonly of: string;
  readonly quantity: number;
  /** How much of it is worked off the ground; absent where none is. */
  readonly aloft?: Aloft;
  /** The lengths that it is cut for from stock, feet; absent of what is not cut, and of one length that is all of it. */
  readonly cut?: readonly number[];
}

/** A quantity of one kind, before waste, with what it is made of. */
export interface Sum {
  readonly kind: Kind;
  readonly net: number;
  /** How much of it is worked off the ground. */
  readonly aloft: Aloft;
  readonly parts: readonly Part[];
  readonly within: readonly Sum[];
}

/** Sums by kind. */
export type Tally = ReadonlyMap<Kind, Sum>;

/**
 * Adds a quantity of an element, how much of it is worked off the ground (none where that is not said), and the lengths
 * that it is cut for.
 */
export type Add = (kind: Kind, of: string, quantity: number, aloft?: Aloft, cut?: readonly number[]) => void;

/** Collects quantities: `add` them one by one, then read `tally`. Nothing is kept of a quantity of 0. */
export function tallying(): { readonly add: Add; readonly tally: Tally } {
  const sums = new Map<Kind, { kind: Kind; net: number; aloft: Aloft; parts: Part[]; within: readonly Sum[] }>();
  const add: Add = (kind, of, quantity, aloft = ON_GROUND, cut) => {
    if (quantity === 0) return;
    const up = aloft.high === 0 ? undefined : { aloft };
    const part: Part = { of, quantity, ...up, ...(cut !== undefined && cut.length !== 1 && { cut }) };
    const sum = sums.get(kind);
    if (sum === undefined) {
      sums.set(kind, { kind, net: quantity, aloft, parts: [part], within: [] });
      return;
    }
    sum.net += quantity;
    sum.aloft = plus(sum.aloft, aloft);
    const last = sum.parts.at(-1)!;
    if (last.of === of) sum.parts[sum.parts.length - 1] = together(last, part);
    else sum.parts.push(part);
  };
  return { add, tally: sums };
}

/** Two parts of one element as one. */
function together(a: Part, b: Part): Part {
  const quantity = a.quantity + b.quantity;
  const aloft = plus(a.aloft ?? ON_GROUND, b.aloft ?? ON_GROUND);
  const both = { of: a.of, quantity, ...(aloft.high > 0 && { aloft }) };
  if (a.cut === undefined && b.cut === undefined) return both;
  return { ...both, cut: [...(a.cut ?? [a.quantity]), ...(b.cut ?? [b.quantity])] };
}

/** Tallies added up, in their order. */
export function addedUp(tallies: readonly Tally[]): Tally {
  const total = new Map<Kind, { kind: Kind; net: number; aloft: Aloft; parts: readonly Part[]; within: Sum[] }>();
  for (const tally of tallies) {
    for (const [kind, part] of tally) {
      const sum = total.get(kind);
      if (sum === undefined) total.set(kind, { kind, net: part.net, aloft: part.aloft, parts: [], within: [part] });
      else {
        sum.net += part.net;
        sum.aloft = plus(sum.aloft, part.aloft);
        sum.within.push(part);
      }
    }
  }
  return total;
}

/** Everything that a sum is made of, down to the element. */
export const partsOf = (sum: Sum): readonly Part[] =>
  sum.within.length === 0 ? sum.parts : sum.within.flatMap(partsOf);
