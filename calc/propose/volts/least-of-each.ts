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

/**
 * One choice of each part, of all that lose no more than so much together the cheapest; null where none do. Exact: all are
 * looked at but those that cost more already, or lose too much whatever the rest is.
 * @param parts the choices of each, none empty
 */
export function leastOfEach<C extends Choice>(parts: readonly (readonly C[])[], most: number): readonly C[] | null {
  const lists = parts.map(worthLooking);
  const rest = (of: (list: readonly C[]) => number): readonly number[] =>
    lists.map((_, i) => lists.slice(i).reduce((sum, list) => sum + of(list), 0));
  const leastPercent = [...rest((list) => list.at(-1)!.percent), 0];
  const leastDollars = [...rest((list) => list[0]!.dollars), 0];
  let best: { readonly taken: readonly C[]; readonly dollars: number } | null = null;
  const go = (at: number, taken: readonly C[], percent: number, dollars: number): void => {
    if (percent + leastPercent[at]! > most + 1e-9) return;
    if (best !== null && dollars + leastDollars[at]! >= best.dollars - 1e-9) return;
    if (at === lists.length) {
      best = { taken, dollars };
      return;
    }
    for (const one of lists[at]!) go(at + 1, [...taken, one], percent + one.percent, dollars + one.dollars);
  };
  go(0, [], 0, 0);
  return best === null ? null : (best as { readonly taken: readonly C[] }).taken;
}
