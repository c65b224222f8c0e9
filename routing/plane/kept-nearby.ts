import { kept } from '../kept/kept.ts';
import { atEach, beside, keptLists, movedItems, patched } from '../kept/kept-list.ts';
import type { Box } from './box.ts';
import { boxIndex, positionsIn } from './box-index.ts';

/** What is stale because something shared is another: all that lies near some boxes, and some places besides. */
export interface Stale {
  readonly boxes: readonly Box[];
  readonly places: Iterable<number>;
}

/** How things are looked at each by itself, with what lies near. */
export interface Looking<Items extends readonly unknown[], Shared extends readonly unknown[], One> {
  readonly work: (items: Items, shared: Shared) => One;
  /** The box of the plan outside of which nothing has a say in what was found of a thing. */
  readonly near: (found: One, first: Items[0]) => Box;
  /** What a change of what is shared makes stale; null: everything. */
  readonly stale: (now: Shared, before: Shared, found: readonly One[], first: readonly Items[0][]) => Stale | null;
}

type ListsOf<Items extends readonly unknown[]> = { readonly [K in keyof Items]: readonly Items[K][] };

/**
 * What is found of each thing of a list, by what stands side by side with it in others and by what lies near it: worked
 * again only where one of the lists holds another item or something near has changed.
 */
export function keptNearby<const Items extends readonly unknown[], const Shared extends readonly unknown[], One>({
  work,
  near,
  stale,
}: Looking<Items, Shared, One>): (lists: ListsOf<Items>, shared: Shared) => readonly One[] {
  const boxesOf = keptLists({
    anew: ([found, first]: readonly [readonly One[], readonly Items[0][]]) =>
      boxIndex(
        found.map((one, i) => near(one, first[i])),
        itself,
      ),
    after: ({ answer }, places, [found, first]) =>
      boxIndex(
        patched(answer.items, places, (i) => near(found[i]!, first[i])),
        itself,
        answer,
      ),
  });
  const workAt = (lists: ListsOf<Items>, shared: Shared, place: number): One =>
    work(beside(lists, place) as unknown as Items, shared);
  return keptLists({
    anew: (lists: ListsOf<Items>, shared: Shared): readonly One[] =>
      atEach((lists[0] as readonly unknown[]).length, (place) => workAt(lists, shared, place)),
    after: ({ answer }, places, lists, shared) => patched(answer, places, (place) => workAt(lists, shared, place)),
    also: (now, { lists, shared: before, answer }) => {
      const first = lists[0] as readonly Items[0][];
      const found = stale(now, before, answer, first);
      if (found === null) return null;
      if (found.boxes.length === 0) return found.places;
      const index = boxesOf([answer, first], []);
      return new Set([...found.places, ...found.boxes.flatMap((box) => positionsIn(index, box))]);
    },
    moved: movedItems,
  });
}

const itself = (box: Box): Box => box;

/** Lists one after the other in one: the same one of the same lists. */
export const flattened = kept((lists: readonly (readonly object[])[]): readonly object[] => lists.flat()) as <
  Item extends object,
>(
  lists: readonly (readonly Item[])[],
) => readonly Item[];
