import type { TakeoffKind } from '../prices/kind.ts';
import { type Aloft, ON_GROUND, plusAloft } from './high.ts';

/** So much of an item in one element. */
export interface TalliedPart {
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
  readonly kind: TakeoffKind;
  readonly net: number;
  /** How much of it is worked off the ground. */
  readonly aloft: Aloft;
  readonly parts: readonly TalliedPart[];
  readonly within: readonly Sum[];
}

/** Sums by kind. */
export type Tally = ReadonlyMap<TakeoffKind, Sum>;

/**
 * Adds a quantity of an element, how much of it is worked off the ground (none where that is not said), and the lengths
 * that it is cut for.
 */
export type Add = (kind: TakeoffKind, of: string, quantity: number, aloft?: Aloft, cut?: readonly number[]) => void;

/** Collects quantities: `add` them one by one, then read `tally`. Nothing is kept of a quantity of 0. */
export function tallying(): { readonly add: Add; readonly tally: Tally } {
  const sums = new Map<
    TakeoffKind,
    { kind: TakeoffKind; net: number; aloft: Aloft; parts: TalliedPart[]; within: readonly Sum[] }
  >();
  const add: Add = (kind, of, quantity, aloft = ON_GROUND, cut) => {
    if (quantity === 0) return;
    const up = aloft.high === 0 ? undefined : { aloft };
    const part: TalliedPart = { of, quantity, ...up, ...(cut !== undefined && cut.length !== 1 && { cut }) };
    const sum = sums.get(kind);
    if (sum === undefined) {
      sums.set(kind, { kind, net: quantity, aloft, parts: [part], within: [] });
      return;
    }
    sum.net += quantity;
    sum.aloft = plusAloft(sum.aloft, aloft);
    const last = sum.parts.at(-1)!;
    if (last.of === of) sum.parts[sum.parts.length - 1] = together(last, part);
    else sum.parts.push(part);
  };
  return { add, tally: sums };
}

/** Two parts of one element as one. */
function together(a: TalliedPart, b: TalliedPart): TalliedPart {
  const quantity = a.quantity + b.quantity;
  const aloft = plusAloft(a.aloft ?? ON_GROUND, b.aloft ?? ON_GROUND);
  const both = { of: a.of, quantity, ...(aloft.high > 0 && { aloft }) };
  if (a.cut === undefined && b.cut === undefined) return both;
  return { ...both, cut: [...(a.cut ?? [a.quantity]), ...(b.cut ?? [b.quantity])] };
}

/** Tallies added up, in their order. */
export function addedUp(tallies: readonly Tally[]): Tally {
  const total = new Map<
    TakeoffKind,
    { kind: TakeoffKind; net: number; aloft: Aloft; parts: readonly TalliedPart[]; within: Sum[] }
  >();
  for (const tally of tallies) {
    for (const [kind, part] of tally) {
      const sum = total.get(kind);
      if (sum === undefined) total.set(kind, { kind, net: part.net, aloft: part.aloft, parts: [], within: [part] });
      else {
        sum.net += part.net;
        sum.aloft = plusAloft(sum.aloft, part.aloft);
        sum.within.push(part);
      }
    }
  }
  return total;
}

/** Everything that a sum is made of, down to the element. */
export const talliedParts = (sum: Sum): readonly TalliedPart[] =>
  sum.within.length === 0 ? sum.parts : sum.within.flatMap(talliedParts);
