import { keptLists } from '../kept/kept-list.ts';
import { numbering } from '../kept/numbered.ts';
import { addTo } from '../lists/grouping.ts';
import { type Box, widened } from './box.ts';
import { type BoxIndex, indexing, positionsIn } from './box-index.ts';

/** What lies on what in a list, by places: every item has at most one host, the first of the list that it lies on. */
export interface Hosted<T> {
  readonly items: readonly T[];
  /** For each item the place of its host; -1 where it lies on nothing that stands before it. */
  readonly of: Int32Array;
}

/** The same, with what is told of it. */
export interface Hosts<T> extends Hosted<T> {
  /** As it was when an item that lies on another, or is lain on, last came, went or moved: all that there is to tell. */
  readonly told: Hosted<T>;
  /** How many items lie on another: none in most lists, and then none has a host that moved. */
  readonly guests: number;
}

/** Rounding of depths: what lies this little less than `into` in another is looked at. */
const NEARLY = 1 - 1e-6;

/**
 * Finds what lies on what in lists: where an item moves, it and those near it are looked at again. Two thousand items in
 * one place have one host, so there are as many answers as items and never one for every pair. `keyOf` is the same for
 * items that are alike and in one place: they are not compared. Items meet only where their boxes lie at least `into` feet
 * in each other, both ways: a row of stalls that touch is not compared at all.
 */
export function keptHosts<T extends object>(
  boxOf: (item: T) => Box,
  meets: (a: T, b: T) => boolean,
  keyOf: (item: T) => readonly number[],
  into: number,
  indexOf: (items: readonly T[]) => BoxIndex<T> = indexing<T>(boxOf),
): (items: readonly T[]) => Hosts<T> {
  /** Places of what may meet an item, its own among them, ascending. */
  const aroundOf = (items: readonly T[], index: BoxIndex<T>, i: number): readonly number[] =>
    positionsIn(index, widened(boxOf(items[i]!), -into * NEARLY));

  const hostOf = (items: readonly T[], around: readonly number[], i: number): number => {
    for (const j of around) {
      if (j >= i) return -1;
      if (meets(items[j]!, items[i]!)) return j;
    }
    return -1;
  };

  const anew = ([items]: readonly [readonly T[]]): Hosts<T> => {
    const of = new Int32Array(items.length);
    const index = indexOf(items);
    const numberOf = numbering();
    const firstOf: number[] = [];
    for (let i = 0; i < items.length; i++) {
      const around = aroundOf(items, index, i);
      // Where there is nothing else there is no twin, before or after: most items are never compared.
      if (around.length === 1 && around[0] === i) {
        of[i] = -1;
        continue;
      }
      const key = numberOf(keyOf(items[i]!));
      const twin = firstOf[key];
      if (twin === undefined) {
        firstOf[key] = i;
        of[i] = hostOf(items, around, i);
      } else of[i] = of[twin]! >= 0 ? of[twin]! : twin;
    }
    const guests = of.reduce((count, host) => count + Number(host >= 0), 0);
    return { items, of, told: { items, of }, guests };
  };

  const hosts = keptLists({
    anew,
    after: ({ answer: last }, moved, [items]) => {
      if (moved.length > MOST_MOVED) return null;
      const index = indexOf(items);
      const stale = new Set(moved);
      for (const place of moved) for (const near of positionsIn(index, boxOf(items[place]!))) stale.add(near);
      for (let i = 0; last.guests > 0 && i < items.length; i++)
        if (last.of[i]! >= 0 && stale.has(last.of[i]!)) stale.add(i);
      if (stale.size > MOST_STALE) return null;
      let { of, guests } = last;
      let touched = false;
      for (const i of stale) {
        const host = hostOf(items, aroundOf(items, index, i), i);
        touched ||= host >= 0 || last.of[i]! >= 0;
        if (host === last.of[i]) continue;
        if (of === last.of) of = of.slice();
        of[i] = host;
        guests += Number(host >= 0) - Number(last.of[i]! >= 0);
      }
      return { items, of, told: touched ? { items, of } : last.told, guests };
    },
  });
  return (items) => hosts([items], []);
}

/** More items than this moved at once, and all are looked at again. */
const MOST_MOVED = 64;
/** More items than this about the places of those that moved, likewise: many of them will be alike. */
const MOST_STALE = 512;

/** Hosts with those that lie on them, both by places and ascending. */
export function guestsOf({ of }: Pick<Hosted<unknown>, 'of'>): ReadonlyMap<number, readonly number[]> {
  const guests = new Map<number, number[]>();
  for (let i = 0; i < of.length; i++) {
    const host = of[i]!;
    if (host < 0) continue;
    addTo(guests, host, i);
  }
  return guests;
}
