/**
 * Where two lists differ. Edits share structure: a list after a change is a copy with a few other items, and the maker
 * of the copy knows which. Kept beside the list, that saves every later stage from going through thousands of items to find the
 * one that moved.
 */
interface Ancestor {
  /** By number, so that a list does not keep those that it was copied from: a weak reference would, until all work is done. */
  readonly list: number;
  /** Where alone the copy may differ from it, ascending. */
  readonly places: readonly number[];
}

/** What is noted of a list that is a copy: the list it was copied from, and the oldest list before it that it differs from in few places. */
const ancestorsOf = new WeakMap<readonly unknown[], readonly Ancestor[]>();

/** The number of each list that another is a copy of. */
const numbers = new WeakMap<readonly unknown[], number>();
let count = 0;

function numbered(list: readonly unknown[]): number {
  const known = numbers.get(list);
  if (known !== undefined) return known;
  numbers.set(list, ++count);
  return count;
}

/** With more places than this, going through the list is as quick. */
const MOST = 2048;
/** Of shorter lists nothing is noted unasked. */
const LONG = 256;
/** Farther back than this many places nothing is carried on. */
const MOST_CARRIED = 64;

/**
 * Notes that a list, which is no longer written to, is a copy of `from` where none but the items at `places`, ascending,
 * may be others. Returns the list. RangeError where the two are not of one length.
 */
export function copied<List extends readonly unknown[]>(
  list: List,
  from: readonly unknown[],
  places: readonly number[],
): List {
  if (list.length !== from.length) throw new RangeError(`a copy of ${from.length} items has ${list.length}`);
  if (list !== from && places.length <= MOST) noted(list, from, places);
  return list;
}

function noted(list: readonly unknown[], from: readonly unknown[], places: readonly number[]): readonly number[] {
  const near: Ancestor = { list: numbered(from), places };
  const far = ancestorsOf.get(from)?.at(-1);
  const carried = far === undefined ? null : together(places, far.places);
  ancestorsOf.set(
    list,
    carried === null || carried.length > MOST_CARRIED ? [near] : [near, { ...far!, places: carried }],
  );
  return places;
}

/** Places where a list holds another item than a list of the same length, ascending. */
export const changedPlaces = (list: readonly unknown[], before: readonly unknown[]): readonly number[] =>
  fewChanged(list, before, list.length)!;

/** The same of lists that may be strangers; null where more than `most` places differ, or the lengths do. */
export function fewChanged(
  list: readonly unknown[],
  before: readonly unknown[],
  most: number,
): readonly number[] | null {
  if (list === before) return NONE;
  if (list.length !== before.length) return null;
  const known = knownPlaces(list, before);
  const changed: number[] = [];
  // Object.is looks at the references alone, where === also reaches into each object, and those are out of the cache.
  if (known === null) {
    for (let i = 0; i < list.length; i++) {
      if (Object.is(list[i], before[i])) continue;
      if (changed.push(i) > most) return null;
    }
    // Those after who hold the two against each other need not go through them.
    if (list.length > LONG && changed.length <= MOST_CARRIED && !ancestorsOf.has(list)) noted(list, before, changed);
    return changed;
  }
  for (const i of known) if (!Object.is(list[i], before[i])) changed.push(i);
  return changed.length > most ? null : changed;
}

/** True where two lists hold the same items. */
export const sameItems = (list: readonly unknown[], before: readonly unknown[]): boolean =>
  fewChanged(list, before, 0) !== null;

const NONE: readonly number[] = [];
const NO_ANCESTORS: readonly Ancestor[] = [];

/** Places outside which the two are the same, ascending; null where nothing is known of them. */
function knownPlaces(list: readonly unknown[], before: readonly unknown[]): readonly number[] | null {
  const own = ancestorsOf.get(list) ?? NO_ANCESTORS;
  const others = ancestorsOf.get(before) ?? NO_ANCESTORS;
  const [one, other] = [numbers.get(list), numbers.get(before)];
  if (other !== undefined) for (const { list: from, places } of own) if (from === other) return places;
  if (one !== undefined) for (const { list: from, places } of others) if (from === one) return places;
  // Two steps of one drag are copies of one list.
  for (const { list: from, places } of own)
    for (const { list: shared, places: more } of others) if (shared === from) return together(places, more);
  return null;
}

const together = (a: readonly number[], b: readonly number[]): readonly number[] =>
  [...new Set([...a, ...b])].sort((one, other) => one - other);
