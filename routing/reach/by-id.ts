interface Named {
  readonly id: string;
}

const places = new WeakMap<readonly Named[], Map<string, number>>();

/** Where in a list the element with an id stands, tried first where it stood before; -1 where it is not there. */
export function placeOf(list: readonly Named[], id: string, before = -1): number {
  if (list[before]?.id === id) return before;
  let known = places.get(list);
  if (!known) {
    known = new Map(list.map((element, i) => [element.id, i]));
    places.set(list, known);
  }
  return known.get(id) ?? -1;
}
