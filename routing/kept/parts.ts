import { changedPlaces, copied } from './changed-places.ts';
import { steadyList } from './kept.ts';
import { keptLists, patched } from './kept-list.ts';

/** How a list falls into parts: each item belongs to one. */
export interface Partition {
  /** Place in the whole list of each item of each part. */
  readonly places: readonly (readonly number[])[];
  /** Part of each item, and its place in it. */
  readonly partOf: Int32Array;
  readonly placeIn: Int32Array;
}

/** Parts by a key of each item, in the order in which the keys first appear; with the keys. */
export function partitionBy<Item>(
  list: readonly Item[],
  keyOf: (item: Item) => string,
): { readonly keys: readonly string[]; readonly partition: Partition } {
  const keys: string[] = [];
  const places: number[][] = [];
  const parts = new Map<string, number>();
  const partOf = new Int32Array(list.length);
  const placeIn = new Int32Array(list.length);
  list.forEach((item, place) => {
    const key = keyOf(item);
    let part = parts.get(key);
    if (part === undefined) {
      part = keys.push(key) - 1;
      parts.set(key, part);
      places.push([]);
    }
    partOf[place] = part;
    placeIn[place] = places[part]!.push(place) - 1;
  });
  return { keys, partition: { places, partOf, placeIn } };
}

type Parts<Item> = readonly (readonly Item[])[];

/** Splits lists by a partition. A part whose items are the same as before is the same list. */
export function splitting<Item>(): (list: readonly Item[], partition: Partition) => Parts<Item> {
  const split = keptLists({
    anew: ([list]: readonly [readonly Item[]], [{ places }]: readonly [Partition]): Parts<Item> =>
      places.map((own) => own.map((place) => list[place]!)),
    after: ({ answer }, places, [list], [{ partOf, placeIn }]) => {
      const parts = [...answer];
      const fresh = new Map<number, Item[]>();
      for (const place of places) {
        const part = partOf[place]!;
        const own = fresh.get(part) ?? [...parts[part]!];
        own[placeIn[place]!] = list[place]!;
        fresh.set(part, own);
        parts[part] = own;
      }
      return copied(parts, answer, [...fresh.keys()].sort(ascending));
    },
  });
  return (list, partition) => split([list], [partition]);
}

const ascending = (a: number, b: number): number => a - b;

/** Joins parts to whole lists, in the order that they were split from. */
export function joining<Item>(): (parts: Parts<Item>, partition: Partition) => readonly Item[] {
  const join = keptLists({
    anew: ([parts]: readonly [Parts<Item>], [{ partOf, placeIn }]: readonly [Partition]): readonly Item[] =>
      Array.from(partOf, (part, place) => parts[part]![placeIn[place]!]!),
    after: ({ answer, lists: [before] }, places, [parts], [{ places: placesOf, partOf, placeIn }]) =>
      patched(
        answer,
        places
          .flatMap((part) => changedPlaces(parts[part]!, before[part]!).map((i) => placesOf[part]![i]!))
          .sort(ascending),
        (place) => parts[partOf[place]!]![placeIn[place]!]!,
      ),
  });
  return (parts, partition) => join([parts], [partition]);
}

/** Puts lists one after the other. */
export function concatenating<Item>(): (lists: Parts<Item>) => readonly Item[] {
  const whole = keptLists({
    anew: ([lists]: readonly [Parts<Item>]): readonly Item[] => ([] as Item[]).concat(...lists),
    after: ({ answer, lists: [before] }, places, [lists]) => {
      if (places.some((k) => lists[k]!.length !== before[k]!.length)) return null;
      const changed = new Map<number, Item>();
      let [from, list] = [0, 0];
      for (const k of places) {
        for (; list < k; list++) from += lists[list]!.length;
        for (const i of changedPlaces(lists[k]!, before[k]!)) changed.set(from + i, lists[k]![i]!);
      }
      return patched(answer, [...changed.keys()], (place) => changed.get(place)!);
    },
  });
  return (lists) => whole([lists], []);
}

/** Cuts lists in chunks of so many; a chunk whose items are the same as before is the same list. */
export function chunking<Item extends object>(most: number): (list: readonly Item[]) => Parts<Item> {
  const steady = steadyList<Item>();
  const chunkAt = (list: readonly Item[], chunk: number): readonly Item[] =>
    steady(list[chunk * most]!, list.slice(chunk * most, (chunk + 1) * most));
  const cut = keptLists({
    anew: ([list]: readonly [readonly Item[]]): Parts<Item> =>
      Array.from({ length: Math.ceil(list.length / most) }, (_, chunk) => chunkAt(list, chunk)),
    after: ({ answer }, places, [list]) =>
      patched(answer, [...new Set(places.map((place) => Math.floor(place / most)))], (chunk) => chunkAt(list, chunk)),
  });
  return (list) => cut([list], []);
}
