/** What a row of the takeoff counts, how it is counted, and where the count comes from. */
export interface TakeoffKind {
  readonly item: string;
  readonly spec: string;
  readonly unit: string;
  readonly basis: string;
}

const kinds = new Map<string, TakeoffKind>();

/** The one kind of this item, spec and basis, so that kinds can be told apart by identity. */
export function takeoffKind(kind: TakeoffKind): TakeoffKind {
  const key = `${kind.item}\n${kind.spec}\n${kind.basis}`;
  const known = kinds.get(key);
  if (known !== undefined) return known;
  kinds.set(key, kind);
  return kind;
}

/** `work`, with its answers remembered by one or two words. */
export function byWords<Answer>(
  work: (first: string, second: string) => Answer,
): (first: string, second: string) => Answer {
  const known = new Map<string, Map<string, Answer>>();
  return (first, second) => {
    let row = known.get(first);
    if (row === undefined) {
      row = new Map();
      known.set(first, row);
    }
    let answer = row.get(second);
    if (answer === undefined) {
      answer = work(first, second);
      row.set(second, answer);
    }
    return answer;
  };
}
