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

/** How an answer about lists is made, and brought up from one that is at hand. */
export interface ListMaking<L extends Lists, Shared extends readonly unknown[], Answer> {
  /** Works the answer from nothing. */
  readonly anew: (lists: L, shared: Shared) => Answer;
  /**
   * Brings an answer up: `places` are those, ascending, where the lists differ or are stale; null where that cannot be
   * done. Never writes to what was answered. The law: it equals what `anew` gives.
   */
  readonly after: (
    before: Before<L, Shared, Answer>,
    places: readonly number[],
    lists: L,
    shared: Shared,
  ) => Answer | null;
  /**
   * Places that are stale because something shared is another; null where all are. Without it all are where anything
   * shared is not the same: identity; of a list, that of its items.
   */
  readonly also?: (shared: Shared, before: Before<L, Shared, Answer>) => Iterable<number> | null;
  /** The answer for lists in which items have other places: at i stands what stood at `from[i]`, or is to be worked where that is -1. */
  readonly moved?: (answer: Answer, from: Int32Array) => Answer;
}

/** An answer about lists and about what they share, brought up from one that is at hand where that is less work. */
export function keptLists<const L extends Lists, const Shared extends readonly unknown[], Answer>(
  making: ListMaking<L, Shared, Answer>,
): (lists: L, shared: Shared) => Answer {
  const known: Before<L, Shared, Answer>[] = [];
  return (lists, shared) => {
    const last = known[0];
    if (last !== undefined && alike(lists, last.lists) && alike(shared, last.shared)) return last.answer;
    const best = nearest(known, lists, shared, making);
    const answer =
      best === null
        ? making.anew(lists, shared)
        : best.places.length === 0
          ? best.before.answer
          : (making.after(best.before, best.places, lists, shared) ?? making.anew(lists, shared));
    const at = best?.places.length === 0 ? known.indexOf(best.of) : Math.min(known.length, MOST - 1);
    toFront(known, at, { lists, shared, answer });
    return answer;
  };
}

function alike(a: readonly unknown[], b: readonly unknown[]): boolean {
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return a.length === b.length;
}

interface Nearest<L extends Lists, Shared extends readonly unknown[], Answer> {
  /** The one at hand, and the same laid beside the lists. */
  readonly of: Before<L, Shared, Answer>;
  readonly before: Before<L, Shared, Answer>;
  readonly places: readonly number[];
}

/** The answer at hand that is the least work to bring up; null where none is any help. */
function nearest<L extends Lists, Shared extends readonly unknown[], Answer>(
  known: readonly Before<L, Shared, Answer>[],
  lists: L,
  shared: Shared,
  { also, moved }: ListMaking<L, Shared, Answer>,
): Nearest<L, Shared, Answer> | null {
  let best: Nearest<L, Shared, Answer> | null = null;
  for (const of of known) {
    const stale = allSame(shared, of.shared) ? NONE : (also?.(shared, of) ?? null);
    if (stale === null) continue;
    let [before, places] = [of, placesOf(lists, of.lists, stale)];
    // What is stale is told by places, which are no longer those of the same items.
    if (
      moved &&
      stale === NONE &&
      (places === null || 2 * places.length > (lists[0]?.length ?? 0)) &&
      areRelated(lists[0] ?? NONE, of.lists[0] ?? NONE)
    ) {
      const laid = laidBeside(of, lists, moved);
      const others = placesOf(lists, laid.lists, NONE);
      if (others !== null && (places === null || others.length < places.length)) [before, places] = [laid, others];
    }
    if (places === null || (best !== null && places.length >= best.places.length)) continue;
    best = { of, before, places };
    if (places.length < FEW) break;
  }
  return best;
}

const NONE: readonly number[] = [];

/** Items of a long list that are looked for in another. */
const SAMPLES = 8;

/** False where none of some items over a long list stands in another: lists of two sites, of which neither helps the other. */
function areRelated(list: readonly unknown[], before: readonly unknown[]): boolean {
  if (list.length < FEW) return true;
  for (let k = 0; k < SAMPLES; k++)
    if (before.includes(list[Math.floor((k * (list.length - 1)) / (SAMPLES - 1))])) return true;
  return false;
}

/** What is known of lists that grew, shrank or were put in another order, by the places that the same items have now. */
function laidBeside<L extends Lists, Shared extends readonly unknown[], Answer>(
  { lists: [first, ...others], shared, answer }: Before<L, Shared, Answer>,
  [now, ...othersNow]: L,
  moved: (answer: Answer, from: Int32Array) => Answer,
): Before<L, Shared, Answer> {
  const places = new Map(first!.map((item, place) => [item, place]));
  const from = Int32Array.from(now!, (item, i) => {
    const place = places.get(item) ?? -1;
    return others.every((list, k) => Object.is(list[place], othersNow[k]![i])) ? place : -1;
  });
  const laid = [first!, ...others].map((list) => Array.from(from, (place) => (place < 0 ? ABSENT : list[place])));
  return { lists: laid as readonly (readonly unknown[])[] as L, shared, answer: moved(answer, from) };
}

/** In the place of an item that was not there. */
const ABSENT = Symbol('absent');

/** Places where lists differ, and those that are stale; null where that is most of them. */
function placesOf(lists: Lists, before: Lists, stale: Iterable<number>): readonly number[] | null {
  const length = lists[0]?.length ?? 0;
  let all: Set<number> | null = null;
  let only: readonly number[] = NONE;
  for (let k = 0; k < lists.length; k++) {
    const places = fewChanged(lists[k]!, before[k]!, Math.max(FEW, length >> 1));
    if (places === null) return null;
    if (places.length === 0) continue;
    if (only.length === 0) only = places;
    else all = added(all ?? new Set(only), places);
  }
  if (stale !== NONE) all = added(all ?? new Set(only), stale);
  return all === null ? only : [...all].sort((a, b) => a - b);
}

function added(places: Set<number>, others: Iterable<number>): Set<number> {
  for (const place of others) places.add(place);
  return places;
}

/** Lists side by side of which each holds one kind of item. */
type ListsOf<Items extends readonly unknown[]> = { readonly [K in keyof Items]: readonly Items[K][] };

/**
 * An answer for what stands side by side at each place of some lists: worked again only where one of them holds another
 * item, or all where what they share is another. Where the lists grow, shrink or are put in another order, what stood side
 * by side before is not worked again. The last list of answers again where none came out another.
 */
export function keptEach<const Items extends readonly unknown[], const Shared extends readonly unknown[], Answer>(
  work: (items: Items, shared: Shared) => Answer,
): (lists: ListsOf<Items>, shared: Shared) => readonly Answer[] {
  const workAt = (lists: Lists, shared: Shared, place: number): Answer =>
    work(beside(lists, place) as unknown as Items, shared);
  return keptLists({
    anew: (lists: ListsOf<Items>, shared: Shared): readonly Answer[] =>
      atEach((lists[0] as readonly unknown[]).length, (place) => workAt(lists, shared, place)),
    after: ({ answer }, places, lists, shared) => patched(answer, places, (place) => workAt(lists, shared, place)),
    moved: movedItems,
  });
}

/** What stands side by side at one place of some lists. */
export function beside(lists: Lists, place: number): readonly unknown[] {
  const items = new Array<unknown>(lists.length);
  for (let k = 0; k < lists.length; k++) items[k] = lists[k]![place];
  return items;
}

/** A list of so many answers, one for each place. */
export function atEach<Answer>(count: number, work: (place: number) => Answer): Answer[] {
  const answers = new Array<Answer>(count);
  for (let place = 0; place < count; place++) answers[place] = work(place);
  return answers;
}

/** Items by the places that they have now; where there was none, what is there is to be worked. */
export const movedItems = <Item>(list: readonly Item[], from: Int32Array): readonly Item[] =>
  Array.from(from, (place) => list[place]!);

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
