import { changedPlaces } from '../kept/changed-places.ts';
import type { Charger, Drop } from './site.ts';

/** Which charger hangs from which drop, by their places in the lists. */
export interface Hanging {
  readonly drops: readonly Drop[];
  /** Place of each charger's drop; -1 where it is not there. */
  readonly at: Int32Array;
  /** First charger at each drop, and the next one after each charger; -1 ends the chain. */
  readonly first: Int32Array;
  readonly next: Int32Array;
}

const memory = new WeakMap<readonly Charger[], Hanging>();

/** Which charger hangs from which drop. The same arrays as long as the chargers stay and each id has its place. */
export function hangingOf(chargers: readonly Charger[], drops: readonly Drop[]): Hanging {
  const known = memory.get(chargers);
  if (known?.drops === drops) return known;
  const hanging = known !== undefined && samePlaces(drops, known.drops) ? { ...known, drops } : found(chargers, drops);
  memory.set(chargers, hanging);
  return hanging;
}

/** Places of the chargers whose drop is another object than in an earlier list; null where the places are others. */
export function chargersMoved(now: Hanging, before: Hanging | null): readonly number[] | null {
  if (before === null || now.at !== before.at) return null;
  const chargers: number[] = [];
  for (const drop of changedPlaces(now.drops, before.drops))
    for (let charger = now.first[drop]!; charger >= 0; charger = now.next[charger]!) chargers.push(charger);
  return chargers.sort((a, b) => a - b);
}

const samePlaces = (drops: readonly Drop[], before: readonly Drop[]): boolean =>
  drops.length === before.length && changedPlaces(drops, before).every((i) => drops[i]!.id === before[i]!.id);

function found(chargers: readonly Charger[], drops: readonly Drop[]): Hanging {
  const places = new Map(drops.map(({ id }, i) => [id, i]));
  const at = Int32Array.from(chargers, ({ drop }) => places.get(drop) ?? -1);
  const first = new Int32Array(drops.length).fill(-1);
  const next = new Int32Array(chargers.length).fill(-1);
  for (let charger = chargers.length - 1; charger >= 0; charger--) {
    const drop = at[charger]!;
    if (drop < 0) continue;
    next[charger] = first[drop]!;
    first[drop] = charger;
  }
  return { drops, at, first, next };
}
