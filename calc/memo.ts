/**
 * Memory for stages: an answer is kept as long as what it was worked from is the same. The site is immutable and edits
 * share structure, so "the same" is identity; of a list, identity of each of its items.
 */

/** True where both are one thing, or two lists of the same things. */
function same(a: unknown, b: unknown): boolean {
  return a === b || (Array.isArray(a) && Array.isArray(b) && sameItems(a, b));
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/**
 * `work`, with its last answer for each `key` remembered: worked again only where an argument is no longer the same.
 * Nothing outlives its key.
 */
export function remembered<Key extends object, Rest extends readonly unknown[], Answer>(
  work: (key: Key, ...rest: Rest) => Answer,
): (key: Key, ...rest: Rest) => Answer {
  const memory = new WeakMap<Key, { readonly rest: Rest; readonly answer: Answer }>();
  return (key, ...rest) => {
    const known = memory.get(key);
    if (known !== undefined && known.rest.every((value, i) => same(value, rest[i]))) return known.answer;
    const answer = work(key, ...rest);
    memory.set(key, { rest, answer });
    return answer;
  };
}

/** `next`, or `previous` where its items are the same, so that who holds it sees that nothing changed. */
export const settled = <Item>(previous: readonly Item[] | undefined, next: readonly Item[]): readonly Item[] =>
  previous !== undefined && sameItems(previous, next) ? previous : next;

/** Items to a chunk: few enough to work again when one changes, many enough that the chunks are few. */
const CHUNK = 128;

/** A list cut in pieces that `work` can remember by their first item. */
export function inChunks<Item extends object, Answer>(
  list: readonly Item[],
  work: (first: Item, chunk: readonly Item[]) => Answer,
): readonly Answer[] {
  const answers: Answer[] = [];
  for (let i = 0; i < list.length; i += CHUNK) answers.push(work(list[i]!, list.slice(i, i + CHUNK)));
  return answers;
}
