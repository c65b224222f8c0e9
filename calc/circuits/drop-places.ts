import type { Charger, Drop } from '../../routing/site/site.ts';

const known = new WeakMap<readonly Charger[], Int32Array>();

/**
 * Where the drop of each charger stands in the list of drops. Found by id once; while drops move and keep their places,
 * only checked.
 */
export function dropPlaces(chargers: readonly Charger[], drops: readonly Drop[]): Int32Array {
  let places = known.get(chargers);
  if (places?.every((place, i) => drops[place]?.id === chargers[i]!.drop)) return places;
  const at = new Map(drops.map(({ id }, i) => [id, i]));
  places = Int32Array.from(chargers, ({ id, drop }) => {
    const place = at.get(drop);
    if (place === undefined) throw new RangeError(`charger ${id} is at drop ${drop}, which is not there`);
    return place;
  });
  known.set(chargers, places);
  return places;
}
