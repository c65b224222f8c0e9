/** What a part of the way to a box may be: the percent of nominal that it then loses, and dollars more than it costs now. */
export interface Choice {
  readonly percent: number;
  readonly dollars: number;
}

/** Only those that nothing beats: cheapest first, each losing less than all that are cheaper. */
export function worthLooking<C extends Choice>(choices: readonly C[]): readonly C[] {
  let least = Number.POSITIVE_INFINITY;
  return choices
    .toSorted((a, b) => a.dollars - b.dollars || a.percent - b.percent)
    .filter(({ percent }) => {
      const isLess = percent < least - 1e-9;
      if (isLess) least = percent;
      return isLess;
    });
}

/** Sums of choices that are looked at of one chain, some tenths of a second; then the cheap one that is begun with has to do. */
const MOST_LOOKED = 200_000;

/**
 * One choice of each part, of all that lose no more than so much together the cheapest; null where none do. Exact where it
 * is done within so many sums, else the cheap one that it begins with: for parts in their order, what loses more or costs
 * more than another way to come as far is left, and what cannot do whatever the rest is.
 * @param parts the choices of each, none empty
 * @param looked sums that are looked at, at most
 */
export function leastOfEach<C extends Choice>(
  parts: readonly (readonly C[])[],
  most: number,
  looked: number = MOST_LOOKED,
): readonly C[] | null {
  const lists = parts.map(worthLooking);
  const leastPercent = afterEach(lists, (list) => list.at(-1)!.percent);
  if (leastPercent[0]! > most + EVEN) return null;
  const leastDollars = afterEach(lists, (list) => list[0]!.dollars);
  const best = cheapFirst(lists, most);
  let ways: readonly Way<C>[] = [{ percent: 0, dollars: 0, taken: null }];
  let left = looked;
  for (const [at, list] of lists.entries()) {
    const longer: Way<C>[] = [];
    for (const way of ways) {
      for (const one of list) {
        const percent = way.percent + one.percent;
        const dollars = way.dollars + one.dollars;
        if (left-- <= 0) return taken(best);
        // The list is by dollars: the rest of it costs more still.
        if (dollars + leastDollars[at + 1]! >= best.dollars - EVEN) break;
        if (percent + leastPercent[at + 1]! <= most + EVEN)
          longer.push({ percent, dollars, taken: { one, before: way.taken } });
      }
    }
    ways = worthLooking(longer);
  }
  const [cheapest] = ways;
  return taken(cheapest !== undefined && cheapest.dollars < best.dollars ? cheapest : best);
}

/** Sums that differ by less are the same. */
const EVEN = 1e-9;

/** A choice of each of the first parts, the last first. */
interface Way<C> extends Choice {
  readonly taken: { readonly one: C; readonly before: Way<C>['taken'] } | null;
}

function taken<C>(way: Way<C>): readonly C[] {
  const all: C[] = [];
  for (let last = way.taken; last !== null; last = last.before) all.unshift(last.one);
  return all;
}

/** What the parts from each on come to at least. */
function afterEach<C>(lists: readonly (readonly C[])[], of: (list: readonly C[]) => number): readonly number[] {
  const sums = [0];
  for (const list of lists.toReversed()) sums.unshift(sums[0]! + of(list));
  return sums;
}

/** All at their cheapest, then again and again the step that takes off most for its dollars until it is enough. */
function cheapFirst<C extends Choice>(lists: readonly (readonly C[])[], most: number): Way<C> {
  const at = lists.map(() => 0);
  const sum = (of: keyof Choice): number => lists.reduce((all, list, i) => all + list[at[i]!]![of], 0);
  while (sum('percent') > most + EVEN) {
    let next: { readonly part: number; readonly to: number; readonly worth: number } | null = null;
    for (const [part, list] of lists.entries()) {
      const now = list[at[part]!]!;
      for (let to = at[part]! + 1; to < list.length; to++) {
        const worth = (now.percent - list[to]!.percent) / Math.max(list[to]!.dollars - now.dollars, EVEN);
        if (next === null || worth > next.worth) next = { part, to, worth };
      }
    }
    if (next === null) break;
    at[next.part] = next.to;
  }
  let way: Way<C> = { percent: sum('percent'), dollars: sum('dollars'), taken: null };
  for (const [i, list] of lists.entries()) way = { ...way, taken: { one: list[at[i]!]!, before: way.taken } };
  return way;
}
