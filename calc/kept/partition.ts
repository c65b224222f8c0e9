import { changedPlaces, copied } from '../../routing/lists/changed-places.ts';

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

/**
 * Splits lists by a partition. A part whose items are the same as in the last list is the same list.
 */
export function splitting<Item>(): (list: readonly Item[], partition: Partition) => readonly (readonly Item[])[] {
  const memory = new WeakMap<Partition, { list: readonly Item[]; parts: readonly (readonly Item[])[] }>();
  return (list, partition) => {
    const known = memory.get(partition);
    if (known === undefined) {
      const parts = partition.places.map((places) => places.map((place) => list[place]!));
      memory.set(partition, { list, parts });
      return parts;
    }
    if (known.list === list) return known.parts;
    let parts: (readonly Item[])[] | null = null;
    const fresh = new Map<number, Item[]>();
    for (const i of changedPlaces(list, known.list)) {
      parts ??= [...known.parts];
      const part = partition.partOf[i]!;
      let own = fresh.get(part);
      if (own === undefined) {
        own = [...parts[part]!];
        fresh.set(part, own);
        parts[part] = own;
      }
      own[partition.placeIn[i]!] = list[i]!;
    }
    const answer = parts ?? known.parts;
    memory.set(partition, { list, parts: answer });
    return answer;
  };
}

/** Joins parts to whole lists: the last list again where no part is another, else a copy of it with the changed parts. */
export function joining<Item>(): (parts: readonly (readonly Item[])[], partition: Partition) => readonly Item[] {
  const memory = new WeakMap<Partition, { parts: readonly (readonly Item[])[]; list: readonly Item[] }>();
  return (parts, partition) => {
    const known = memory.get(partition);
    let list: Item[] | null = null;
    const changed: number[] = [];
    for (let part = 0; part < parts.length; part++) {
      const own = parts[part]!;
      if (own === known?.parts[part]) continue;
      list ??= known === undefined ? new Array<Item>(partition.partOf.length) : known.list.slice();
      const places = partition.places[part]!;
      for (let i = 0; i < places.length; i++) {
        const place = places[i]!;
        if (Object.is(list[place], own[i])) continue;
        list[place] = own[i]!;
        changed.push(place);
      }
    }
    if (known !== undefined && list !== null) copied(list, known.list, changed.sort(ascending));
    const answer = list ?? known?.list ?? [];
    memory.set(partition, { parts, list: answer });
    return answer;
  };
}

const ascending = (a: number, b: number): number => a - b;

/**
 * Works each part once more only where something about it changed: `lists` hold what answer i depends on at place i, and
 * `shared` what all of them do. The last list again where nothing changed.
 */
export function partwise<Answer>(): (
  owner: object,
  lists: readonly (readonly unknown[])[],
  shared: readonly unknown[],
  work: (part: number) => Answer,
) => readonly Answer[] {
  interface Known {
    readonly lists: readonly (readonly unknown[])[];
    readonly shared: readonly unknown[];
    readonly answers: readonly Answer[];
  }
  const memory = new WeakMap<object, Known>();
  return (owner, lists, shared, work) => {
    const known = memory.get(owner);
    const count = lists[0]?.length ?? 0;
    const usable =
      known?.answers.length === count &&
      known.lists.length === lists.length &&
      known.shared.length === shared.length &&
      known.shared.every((one, i) => one === shared[i]);
    let answers: Answer[] | null = usable ? null : new Array<Answer>(count);
    for (let part = 0; part < count; part++) {
      let same = usable;
      for (let k = 0; same && k < lists.length; k++) same = lists[k]![part] === known!.lists[k]![part];
      if (same) continue;
      answers ??= known!.answers.slice();
      answers[part] = work(part);
    }
    const all = answers ?? known!.answers;
    memory.set(owner, { lists, shared, answers: all });
    return all;
  };
}

/** Puts lists one after the other: the last list again where none is another, else a copy where the lengths allow it. */
export function concatenating<Item>(): (owner: object, lists: readonly (readonly Item[])[]) => readonly Item[] {
  const memory = new WeakMap<object, { lists: readonly (readonly Item[])[]; whole: readonly Item[] }>();
  return (owner, lists) => {
    const known = memory.get(owner);
    const whole = known === undefined ? null : patched(known, lists);
    const answer = whole ?? ([] as Item[]).concat(...lists);
    memory.set(owner, { lists, whole: answer });
    return answer;
  };
}

/** The last whole with the changed lists written over; null where one is longer or shorter than it was. */
function patched<Item>(
  known: { readonly lists: readonly (readonly Item[])[]; readonly whole: readonly Item[] },
  lists: readonly (readonly Item[])[],
): readonly Item[] | null {
  if (known.lists.length !== lists.length) return null;
  let copy: Item[] | null = null;
  const changed: number[] = [];
  let from = 0;
  for (let i = 0; i < lists.length; i++) {
    const list = lists[i]!;
    const before = known.lists[i]!;
    if (list.length !== before.length) return null;
    if (list !== before) {
      copy ??= known.whole.slice();
      for (let k = 0; k < list.length; k++) {
        if (Object.is(list[k], before[k])) continue;
        copy[from + k] = list[k]!;
        changed.push(from + k);
      }
    }
    from += list.length;
  }
  return copy === null ? known.whole : copied(copy, known.whole, changed);
}
