import { changedPlaces } from '../kept/changed-places.ts';
import { addTo } from '../lists/grouping.ts';
import type { Box } from './box.ts';
import { type BoxIndex, boxIndex, positionsIn } from './box-index.ts';

/** What lies on what in a list, by places: every item has at most one host, the first of the list that it lies on. */
export interface Hosts {
  /** For each item the place of its host; -1 where it lies on nothing that stands before it. */
  readonly of: Int32Array;
  /** Another object after each call in which an item that lies on another, or is lain on, came, went or moved. */
  readonly told: object;
}

/**
 * Finds what lies on what in a list, and keeps it by the identity of the items: where one moves, it and those near it are
 * looked at again. Two thousand items in one place have one host, so there are as many answers as items and never one for
 * every pair. `keyOf` is the same for items that are alike and in one place: they are not compared.
 */
export function keptHosts<T extends object>(
  boxOf: (item: T) => Box,
  meets: (a: T, b: T) => boolean,
  keyOf: (item: T) => string,
): (items: readonly T[]) => Hosts {
  let index: BoxIndex<T> | undefined;
  let last: Hosts = { of: new Int32Array(0), told: {} };
  /** How many items lie on another: none in most lists, and then none has a host that moved. */
  let guests = 0;

  const hostOf = (items: readonly T[], i: number): number => {
    const item = items[i]!;
    for (const j of positionsIn(index!, boxOf(item))) {
      if (j >= i) return -1;
      if (meets(items[j]!, item)) return j;
    }
    return -1;
  };

  const all = (items: readonly T[]): Int32Array => {
    const of = new Int32Array(items.length);
    const alike = new Map<string, number>();
    for (let i = 0; i < items.length; i++) {
      const key = keyOf(items[i]!);
      const twin = alike.get(key);
      if (twin === undefined) {
        alike.set(key, i);
        of[i] = hostOf(items, i);
      } else of[i] = of[twin]! >= 0 ? of[twin]! : twin;
    }
    return of;
  };

  const anew = (items: readonly T[]): Hosts => {
    last = { of: all(items), told: {} };
    guests = last.of.reduce((count, host) => count + Number(host >= 0), 0);
    return last;
  };

  return (items) => {
    if (index?.items === items) return last;
    const before = index;
    index = boxIndex(items, boxOf, index);
    const moved = before && before.items.length === items.length ? changedPlaces(items, before.items) : null;
    if (moved === null || moved.length > MOST_MOVED) return anew(items);
    const was = last.of;
    const stale = new Set(moved);
    for (const place of moved) for (const near of positionsIn(index, boxOf(items[place]!))) stale.add(near);
    for (let i = 0; guests > 0 && i < was.length; i++) if (was[i]! >= 0 && stale.has(was[i]!)) stale.add(i);
    if (stale.size > MOST_STALE) return anew(items);
    let of = was;
    let touched = false;
    for (const i of stale) {
      const host = hostOf(items, i);
      touched ||= host >= 0 || was[i]! >= 0;
      if (host === was[i]) continue;
      if (of === was) of = was.slice();
      of[i] = host;
      guests += Number(host >= 0) - Number(was[i]! >= 0);
    }
    last = { of, told: touched ? {} : last.told };
    return last;
  };
}

/** More items than this moved at once, and all are looked at again. */
const MOST_MOVED = 64;
/** More items than this about the places of those that moved, likewise: many of them will be alike. */
const MOST_STALE = 512;

/** Hosts with those that lie on them, both by places and ascending. */
export function guestsOf({ of }: Hosts): ReadonlyMap<number, readonly number[]> {
  const guests = new Map<number, number[]>();
  for (let i = 0; i < of.length; i++) {
    const host = of[i]!;
    if (host < 0) continue;
    addTo(guests, host, i);
  }
  return guests;
}
