import { kept } from '../kept/kept.ts';
import { keptLists, patched } from '../kept/kept-list.ts';
import { listingIds, placesById } from './ids.ts';
import type { Charger, Drop } from './site.ts';

/** Which charger hangs from which drop, by their places in the lists. */
export interface Hanging {
  /** Place of each charger's drop; -1 where it is not there. */
  readonly at: Int32Array;
  /** First charger at each drop, and the next one after each charger; -1 ends the chain. */
  readonly first: Int32Array;
  readonly next: Int32Array;
}

const dropIds = listingIds<Drop>();

/** Which charger hangs from which drop. The same arrays as long as the chargers stay and each id has its place. */
export const hangingOf = (chargers: readonly Charger[], drops: readonly Drop[]): Hanging =>
  hangingBy(chargers, dropIds(drops));

const hangingBy = kept((chargers: readonly Charger[], ids: readonly string[]): Hanging => {
  const places = placesById(ids);
  const at = Int32Array.from(chargers, ({ drop }) => places.get(drop) ?? -1);
  const first = new Int32Array(ids.length).fill(-1);
  const next = new Int32Array(chargers.length).fill(-1);
  for (let charger = chargers.length - 1; charger >= 0; charger--) {
    const drop = at[charger]!;
    if (drop < 0) continue;
    next[charger] = first[drop]!;
    first[drop] = charger;
  }
  return { at, first, next };
});

/** The drop of each charger, in the order of the chargers. RangeError for a charger at a drop that is not there. */
export const dropsOf = (chargers: readonly Charger[], drops: readonly Drop[]): readonly Drop[] =>
  hungAt([drops], [chargers, hangingOf(chargers, drops)]);

const hungAt = keptLists({
  anew: ([drops]: readonly [readonly Drop[]], [chargers, { at }]: readonly [readonly Charger[], Hanging]) =>
    chargers.map(({ id, drop }, i): Drop => {
      if (at[i]! < 0) throw new RangeError(`charger ${id} hangs at drop ${drop}, which is not in the site`);
      return drops[at[i]!]!;
    }) as readonly Drop[],
  after: ({ answer }, moved, [drops], [, { at, first, next }]) => {
    const chargers: number[] = [];
    for (const drop of moved)
      for (let charger = first[drop]!; charger >= 0; charger = next[charger]!) chargers.push(charger);
    return patched(
      answer,
      chargers.sort((a, b) => a - b),
      (charger) => drops[at[charger]!]!,
    );
  },
});
