import type { Charger, Drop } from '../../routing/site/site.ts';

const memory = new WeakMap<readonly number[], readonly number[]>();

/**
 * Where the drops of some chargers, by their places, stand in the list of drops. Found by id once; while drops move and
 * keep their places, only checked, and the same list comes back.
 */
export function dropPlaces(
  chargers: readonly Charger[],
  drops: readonly Drop[],
  places: readonly number[],
): readonly number[] {
  const known = memory.get(places);
  let i = 0;
  if (known !== undefined) while (i < places.length && drops[known[i]!]?.id === chargers[places[i]!]!.drop) i++;
  if (known !== undefined && i === places.length) return known;
  const at = positionsOf(drops);
  const found = places.map((place) => {
    const { id, drop } = chargers[place]!;
    const position = at.get(drop);
    if (position === undefined) throw new RangeError(`charger ${id} is at drop ${drop}, which is not there`);
    return position;
  });
  memory.set(places, found);
  return found;
}

const maps = new WeakMap<readonly Drop[], ReadonlyMap<string, number>>();

function positionsOf(drops: readonly Drop[]): ReadonlyMap<string, number> {
  let map = maps.get(drops);
  if (map === undefined) {
    map = new Map(drops.map(({ id }, i) => [id, i]));
    maps.set(drops, map);
  }
  return map;
}
