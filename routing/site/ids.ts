import { kept } from '../kept/kept.ts';
import { keptEach } from '../kept/kept-list.ts';

/** The ids of a list: the same list while they are the same, whatever else of its elements changes. */
export function listingIds<T extends { readonly id: string }>(): (list: readonly T[]) => readonly string[] {
  const each = keptEach(([{ id }]: readonly [T]) => id);
  return (list) => each([list], []);
}

/** Where each id of a list stands. */
export const placesById = kept((ids: readonly string[]): ReadonlyMap<string, number> => {
  const places = new Map<string, number>();
  for (let place = 0; place < ids.length; place++) places.set(ids[place]!, place);
  return places;
});

/** Where each element of a list stands, by its id. */
export const indexById = (list: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(list.map(({ id }, place) => [id, place]));
