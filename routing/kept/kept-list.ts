import { copied, fewChanged } from './changed-places.ts';
import { allSame, toFront } from './kept.ts';

/** Lists side by side, one length each time or another: of answer i, what stands at place i has a say. */
export type Lists = readonly (readonly unknown[])[];

/** An answer, and what it was worked from. */
export interface Before<L extends Lists, Shared extends readonly unknown[], Answer> {
  readonly lists: L;
  readonly shared: Shared;
  readonly answer: Answer;
}

/** Answers at hand, the last one first: this site's, another's beside it, and those of both as they are built. */
const MOST = 4;
/** An answer about lists that differ at fewer places than this is as good as any. */
const FEW = 64;

/**
 * An answer about lists and about what they share, brought up from one that is at hand, about lists that differ from these
 * at some places.
 * @param anew works the answer from nothing
 * @param after brings an answer up: `places` are those, ascending, where the lists differ; null where that cannot be done.
 * It never writes to what was answered. The law: it equals what `anew` gives
 * @param also places that are stale because something shared is another: null where all are, and that is so of anything
 * shared that is not the same (identity; of a list, that of its items) unless told otherwise
 */
export function keptLists<const L extends Lists, const Shared extends readonly unknown[], Answer>(
  anew: (lists: L, shared: Shared) => Answer,
  after: (before: Before<L, Shared, Answer>, places: readonly number[], lists: L, shared: Shared) => Answer | null,
  also: (shared: Shared, before: Before<L, Shared, Answer>) => Iterable<number> | null = () => null,
): (lists: L, shared: Shared) => Answer {
  const known: Before<L, Shared, Answer>[] = [];
  return (lists, shared) => {
    const best = nearest(known, lists, shared, also);
    const answer =
      best === null
        ? anew(lists, shared)
        : best.places.length === 0
          ? best.before.answer
          : (after(best.before, best.places, lists, shared) ?? anew(lists, shared));
    const at = best?.places.length === 0 ? known.indexOf(best.before) : Math.min(known.length, MOST - 1);
    toFront(known, at, { lists, shared, answer });
    return answer;
  };
}

/** The answer at hand that is the least work to bring up; null where none is any help. */
function nearest<L extends Lists, Shared extends readonly unknown[], Answer>(
  known: readonly Before<L, Shared, Answer>[],
  lists: L,
  shared: Shared,
  also: (shared: Shared, before: Before<L, Shared, Answer>) => Iterable<number> | null,
): { readonly before: Before<L, Shared, Answer>; readonly places: readonly number[] } | null {
  let best: { readonly before: Before<L, Shared, Answer>; readonly places: readonly number[] } | null = null;
  for (const before of known) {
    const places = placesOf(lists, shared, before, also);
    if (places === null || (best !== null && places.length >= best.places.length)) continue;
    best = { before, places };
    if (places.length < FEW) break;
  }
  return best;
}

function placesOf<L extends Lists, Shared extends readonly unknown[], Answer>(
  lists: L,
  shared: Shared,
  before: Before<L, Shared, Answer>,
  also: (shared: Shared, before: Before<L, Shared, Answer>) => Iterable<number> | null,
): readonly number[] | null {
  const length = lists[0]?.length ?? 0;
  let stale: Set<number> | null = null;
  let only: readonly number[] = [];
  for (let k = 0; k < lists.length; k++) {
    const places = fewChanged(lists[k]!, before.lists[k]!, Math.max(FEW, length >> 1));
    if (places === null) return null;
    if (places.length === 0) continue;
    if (only.length === 0) only = places;
    else stale = added(stale ?? new Set(only), places);
  }
  if (!allSame(shared, before.shared)) {
    const others = also(shared, before);
    if (others === null) return null;
    stale = added(stale ?? new Set(only), others);
  }
  return stale === null ? only : [...stale].sort((a, b) => a - b);
}

function added(places: Set<number>, others: Iterable<number>): Set<number> {
  for (const place of others) places.add(place);
  return places;
}

/** Lists side by side of which each holds one kind of item. */
type ListsOf<Items extends readonly unknown[]> = { readonly [K in keyof Items]: readonly Items[K][] };

/**
 * An answer for each place of some lists side by side: worked again only where one of them holds another item, or all
 * where what they share is another. The last list of answers again where none came out another.
 * @param work is given what stands at a place of each list
 */
export function keptEach<const Items extends readonly unknown[], const Shared extends readonly unknown[], Answer>(
  work: (items: Items, shared: Shared, place: number) => Answer,
): (lists: ListsOf<Items>, shared: Shared) => readonly Answer[] {
  const workAt = (lists: Lists, shared: Shared, place: number): Answer =>
    work(lists.map((list) => list[place]) as unknown as Items, shared, place);
  return keptLists(
    (lists: ListsOf<Items>, shared: Shared): readonly Answer[] =>
      Array.from(lists[0] as readonly unknown[], (_, place) => workAt(lists, shared, place)),
    ({ answer }, places, lists, shared) => patched(answer, places, (place) => workAt(lists, shared, place)),
  );
}

/** A copy of a list with other items at some places, ascending; the list itself where they turn out to be the same. */
export function patched<Item>(
  list: readonly Item[],
  places: readonly number[],
  itemAt: (place: number) => Item,
): readonly Item[] {
  let copy: Item[] | null = null;
  const changed: number[] = [];
  for (const place of places) {
    const item = itemAt(place);
    if (Object.is(item, list[place])) continue;
    copy ??= list.slice();
    copy[place] = item;
    changed.push(place);
  }
  return copy === null ? list : copied(copy, list, changed);
}
