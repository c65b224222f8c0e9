import { sameItems } from './changed-places.ts';

/** Answers that are kept for one first argument: this site's, another's beside it, and those of both as they are built. */
const MOST = 4;

/** An answer, what it was asked of, and the one before it for the same first argument: most have none. */
interface Answered<Args, Answer> {
  readonly args: Args;
  readonly answer: Answer;
  next: Answered<Args, Answer> | null;
}

/** True where both are one thing, or two lists of the same things. */
const same = (a: unknown, b: unknown): boolean =>
  Object.is(a, b) || (Array.isArray(a) && Array.isArray(b) && sameItems(a, b));

export function allSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!same(a[i], b[i])) return false;
  return true;
}

/**
 * `work`, whose answer stays the same object while what it is asked of is the same: identity, for all that a site is made
 * of is immutable and edits share structure; of a list, identity of each of its items.
 *
 * The first argument, an object, is what answers are kept with: they go when it goes. For one that stays, the last few
 * answers are kept, so that two sites asked about in turn do not put each other out. Without arguments, `work` is done
 * when it is first asked for and never again. The law: a kept answer equals one worked anew. Never hand a kept function by
 * name to `map`, which would ask it of the place and the whole list besides.
 */
export function kept<Args extends readonly [] | readonly [object, ...(readonly unknown[])], Answer>(
  work: (...args: Args) => Answer,
): (...args: Args) => Answer {
  // Not every one is asked, and a memory of what goes by nothing is one answer.
  let memory: WeakMap<object, Answered<Args, Answer>> | null = null;
  let only: Answered<Args, Answer> | null = null;
  return (...args) => {
    const key = args[0];
    if (key === undefined) {
      only ??= { args, answer: work(...args), next: null };
      return only.answer;
    }
    memory ??= new WeakMap();
    const last = memory.get(key) ?? null;
    let before: Answered<Args, Answer> | null = null;
    let count = 1;
    for (let one = last; one !== null; before = one, one = one.next, count++) {
      if (!allSame(args, one.args)) {
        if (count === MOST) one.next = null;
        continue;
      }
      if (before === null) return one.answer;
      before.next = one.next;
      one.next = last;
      memory.set(key, one);
      return one.answer;
    }
    const answer = work(...args);
    memory.set(key, { args, answer, next: memory.get(key) ?? null });
    return answer;
  };
}

/** Answers by key for one owner: beyond, they are worked anew. */
const MOST_KEYS = 50_000;

/**
 * The same of what is alike more often than it is the same: an answer for each key that says all that `work` goes by besides
 * its first argument, with which the answers are kept, so many at `most`.
 */
export function keptByKey<Owner extends object, Rest extends readonly unknown[], Answer>(
  keyOf: (...rest: Rest) => string | number,
  work: (owner: Owner, ...rest: Rest) => Answer,
  most = MOST_KEYS,
): (owner: Owner, ...rest: Rest) => Answer {
  const memory = new WeakMap<Owner, Map<string | number, { readonly answer: Answer }>>();
  return (owner, ...rest) => {
    let known = memory.get(owner);
    if (known === undefined) {
      known = new Map();
      memory.set(owner, known);
    }
    const key = keyOf(...rest);
    const before = known.get(key);
    if (before !== undefined) return before.answer;
    const answer = work(owner, ...rest);
    if (known.size >= most) known.clear();
    known.set(key, { answer });
    return answer;
  };
}

/** Puts one at the beginning of a list; those before the place move up by one, over what stood there. */
export function toFront<One>(list: One[], place: number, one: One): void {
  for (let i = place; i > 0; i--) list[i] = list[i - 1]!;
  list[0] = one;
}

/** A list by a key: the one given before where its items are the same, so that what follows sees that nothing changed. */
export const steadyList = <Item>(): ((key: object, list: readonly Item[]) => readonly Item[]) =>
  kept((_key: object, list: readonly Item[]) => list);
