import { changedPlaces, copied } from '../../routing/lists/changed-places.ts';
import type { Charger, Drop } from '../../routing/site/site.ts';

interface Known {
  readonly drops: readonly Drop[];
  /** Charger at each place of the list of drops, as a chain: the first one, and the next one after each; -1 ends it. */
  readonly first: Int32Array;
  readonly next: Int32Array;
  readonly of: readonly Drop[];
}

const memory = new WeakMap<readonly Charger[], Known>();

/**
 * The drop of each charger, in the order of the chargers. While drops move and keep their places in the list, the last
 * answer with the moved ones changed. RangeError for a charger at a drop that is not there.
 */
export function dropsOf(chargers: readonly Charger[], drops: readonly Drop[]): readonly Drop[] {
  const known = memory.get(chargers);
  const answer = (known === undefined ? null : moved(known, drops)) ?? found(chargers, drops);
  memory.set(chargers, answer);
  return answer.of;
}

function moved(known: Known, drops: readonly Drop[]): Known | null {
  if (known.drops === drops) return known;
  if (known.drops.length !== drops.length) return null;
  let of: Drop[] | null = null;
  const changed: number[] = [];
  for (const i of changedPlaces(drops, known.drops)) {
    const drop = drops[i]!;
    if (drop.id !== known.drops[i]!.id) return null;
    of ??= known.of.slice();
    for (let charger = known.first[i]!; charger >= 0; charger = known.next[charger]!) {
      of[charger] = drop;
      changed.push(charger);
    }
  }
  if (of !== null)
    copied(
      of,
      known.of,
      changed.sort((a, b) => a - b),
    );
  return { ...known, drops, of: of ?? known.of };
}

function found(chargers: readonly Charger[], drops: readonly Drop[]): Known {
  const places = new Map(drops.map(({ id }, i) => [id, i]));
  const first = new Int32Array(drops.length).fill(-1);
  const next = new Int32Array(chargers.length).fill(-1);
  const of = chargers.map(({ id, drop }, charger) => {
    const place = places.get(drop);
    if (place === undefined) throw new RangeError(`charger ${id} is at drop ${drop}, which is not there`);
    next[charger] = first[place]!;
    first[place] = charger;
    return drops[place]!;
  });
  return { drops, first, next, of };
}
