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
