import Flatbush from 'flatbush';
import { changedPlaces } from '../kept/changed-places.ts';
import { keptLists } from '../kept/kept-list.ts';
import { ascending } from '../lists/ascending.ts';
import { type Box, boxesMeet } from './box.ts';

/** Items that can be searched by box. */
export interface BoxIndex<T> {
  readonly items: readonly T[];
  readonly box: (item: T) => Box;
  /** The tree, and the items that it was built on. */
  readonly tree: Flatbush | null;
  readonly built: readonly T[];
  /** Positions whose item is no longer the one in the tree. */
  readonly changed: readonly number[];
}

// Past this many, going through the changed ones costs more at each search than a new tree costs once.
const MOST_CHANGED = 32;

/**
 * An index of some items by a box of each. Where `last` indexes a list that differs in a few items, its tree is kept and
 * the few are looked at one by one, so that dragging one item does not build a tree at every step.
 */
export function boxIndex<T>(items: readonly T[], box: (item: T) => Box, last?: BoxIndex<T>): BoxIndex<T> {
  if (last && last.built.length === items.length) {
    const since = new Set([...last.changed, ...changedPlaces(items, last.items)]);
    const changed = [...since].filter((i) => !Object.is(items[i], last.built[i])).sort((a, b) => a - b);
    if (changed.length <= MOST_CHANGED) return { items, box, tree: last.tree, built: last.built, changed };
  }
  if (items.length === 0) return { items, box, tree: null, built: items, changed: [] };
  const tree = new Flatbush(items.length);
  for (const item of items) {
    const { minX, minY, maxX, maxY } = box(item);
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  return { items, box, tree, built: items, changed: [] };
}

/** `boxIndex` of one list after the other, by one box of each item. */
export function indexing<T>(box: (item: T) => Box): (items: readonly T[]) => BoxIndex<T> {
  const index = keptLists({
    anew: ([items]: readonly [readonly T[]]): BoxIndex<T> => boxIndex(items, box),
    after: ({ answer }, _, [items]) => boxIndex(items, box, answer),
  });
  return (items) => index([items], []);
}

/**
 * Finds those of a list, in its order, of which the box shares a point with a window. Boxes are measured once for a list: a
 * large lot has a window for each of its enlarged plans, and few of its elements in any.
 */
export function finderBy<T>(box: (item: T) => Box): (items: readonly T[], window: Box) => readonly T[] {
  const index = indexing(box);
  return (items, window) => positionsIn(index(items), window).map((i) => items[i]!);
}

/** Positions of the items whose box shares a point with a box, ascending. */
export function positionsIn<T>(index: BoxIndex<T>, box: Box): number[] {
  if (!index.tree) return [];
  const found = index.tree.search(box.minX, box.minY, box.maxX, box.maxY);
  if (index.changed.length === 0) return ascending(found);
  const kept = found.filter((i) => index.items[i] === index.built[i]);
  for (const i of index.changed) if (boxesMeet(index.box(index.items[i]!), box)) kept.push(i);
  return ascending(kept);
}
