/** What a row of the takeoff counts, how it is counted, and where the count comes from. */
export interface TakeoffKind {
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  readonly basis: string;
}

/** Kinds that somebody holds, by their words. Angles and lengths make kinds without end: those that nobody holds any more go. */
const kinds = new Map<string, WeakRef<TakeoffKind>>();
/** With more than this, those that have gone are taken out; twice those that are left the next time. */
const FEW = 4096;
let most = FEW;

/** The one kind of this item, spec and basis, so that kinds can be told apart by identity for as long as one is held. */
export function takeoffKind(kind: TakeoffKind): TakeoffKind {
  const key = `${kind.item}\n${kind.spec}\n${kind.basis}`;
  const known = kinds.get(key)?.deref();
  if (known !== undefined) return known;
  if (kinds.size >= most) {
    for (const [words, one] of kinds) if (one.deref() === undefined) kinds.delete(words);
    most = Math.max(FEW, 2 * kinds.size);
  }
  kinds.set(key, new WeakRef(kind));
  return kind;
}

/** Answers that are remembered for one `byWords`: beyond, all are worked anew. */
const MOST_ANSWERS = 4096;

/** `work`, with its answers remembered by one or two words. */
export function byWords<Answer>(
  work: (first: string, second: string) => Answer,
): (first: string, second: string) => Answer {
  const known = new Map<string, Map<string, Answer>>();
  let count = 0;
  return (first, second) => {
    let row = known.get(first);
    const before = row?.get(second);
    if (before !== undefined) return before;
    const answer = work(first, second);
    if (++count > MOST_ANSWERS) {
      known.clear();
      row = undefined;
      count = 1;
    }
    if (row === undefined) {
      row = new Map();
      known.set(first, row);
    }
    row.set(second, answer);
    return answer;
  };
}
