import { ELEMENT_LISTS, type ElementList } from './schema.ts';
import type { Site } from './site.ts';

type WithId = { readonly id: string };

const maps = new WeakMap<readonly WithId[], ReadonlyMap<string, WithId>>();

/** The elements of a list by their ids. The same list gives the same map, built once. */
export function byId<T extends WithId>(list: readonly T[]): ReadonlyMap<string, T> {
  const before = maps.get(list);
  if (before !== undefined) return before as ReadonlyMap<string, T>;
  const map = new Map(list.map((element) => [element.id, element]));
  maps.set(list, map);
  return map;
}

/** An element with the list it stands in, told apart by `list`. */
export type Found = { [L in ElementList]: { readonly list: L; readonly element: Site[L][number] } }[ElementList];

/** The element of this id, whichever list it stands in; undefined where none has it. */
export function elementById(site: Site, id: string): Found | undefined {
  for (const list of ELEMENT_LISTS) {
    const element = byId<WithId>(site[list]).get(id);
    if (element !== undefined) return { list, element } as Found;
  }
  return undefined;
}
