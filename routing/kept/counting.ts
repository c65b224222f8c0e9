import { keptLists } from './kept-list.ts';

/** Counts the items of a list that a test holds for; where it differs at some places from one counted, only those are tested. */
export function counting<Item>(holds: (item: Item) => boolean): (list: readonly Item[]) => number {
  const count = keptLists({
    anew: ([list]: readonly [readonly Item[]]): number => {
      let found = 0;
      for (const item of list) if (holds(item)) found++;
      return found;
    },
    after: ({ answer, lists: [before] }, places, [list]) =>
      places.reduce((found, i) => found + Number(holds(list[i]!)) - Number(holds(before[i]!)), answer),
  });
  return (list) => count([list], []);
}
