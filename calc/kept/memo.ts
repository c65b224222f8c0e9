/**
 * Memory for stages: an answer is kept as long as what it was worked from is the same. The site is immutable and edits
 * share structure, so "the same" is identity; of a list, identity of each of its items. Nothing outlives its key.
 */

/**
 * First place from `from` on where a list holds another item than one of the same length held before; the length where
 * there is none. Object.is, for it looks at the references alone: === also reaches into each object, and a long list of
 * them is out of the cache.
 */
export function nextChange(list: readonly unknown[], before: readonly unknown[], from: number): number {
  const end = list.length;
  let i = from;
  while (i < end && Object.is(list[i], before[i])) i++;
  return i;
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && nextChange(a, b, 0) === a.length;

/** True where both are one thing, or two lists of the same things. */
const same = (a: unknown, b: unknown): boolean => a === b || (Array.isArray(a) && Array.isArray(b) && sameItems(a, b));

function allSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  for (let i = 0; i < a.length; i++) if (!same(a[i], b[i])) return false;
  return true;
}

/** `work`, with its last answer for each `key` remembered: worked again only where an argument is no longer the same. */
export function remembered<Key extends object, Rest extends readonly unknown[], Answer>(
  work: (key: Key, ...rest: Rest) => Answer,
): (key: Key, ...rest: Rest) => Answer {
  const memory = new WeakMap<Key, { readonly rest: Rest; readonly answer: Answer }>();
  return (key, ...rest) => {
    const known = memory.get(key);
    if (known !== undefined && allSame(rest, known.rest)) return known.answer;
    const answer = work(key, ...rest);
    memory.set(key, { rest, answer });
    return answer;
  };
}

/** `next`, or `previous` where its items are the same, so that who holds it sees that nothing changed. */
export const settled = <Item>(previous: readonly Item[] | undefined, next: readonly Item[]): readonly Item[] =>
  previous !== undefined && sameItems(previous, next) ? previous : next;

/**
 * Cuts lists in chunks of `most`; the same chunk again as long as its items are the same, for `remembered` to know it by.
 */
export function chunking<Item extends object>(most: number): (list: readonly Item[]) => readonly (readonly Item[])[] {
  const memory = new WeakMap<Item, readonly Item[]>();
  return (list) => {
    const chunks: (readonly Item[])[] = [];
    for (let from = 0; from < list.length; from += most) {
      const chunk = list.slice(from, from + most);
      const kept = settled(memory.get(chunk[0]!), chunk);
      memory.set(chunk[0]!, kept);
      chunks.push(kept);
    }
    return chunks;
  };
}
