import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Site } from '../../../routing/site/site.ts';

/** Ids of the chargers on each drop. */
export const chargersByDrop = kept((chargers: Site['chargers']): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>();
  for (const { id, drop } of chargers) addTo(found, drop, id);
  return found;
});
