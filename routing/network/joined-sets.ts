/** Sets of whole numbers that grow together: which of 0..count-1 have been joined, directly or through others. */
export interface JoinedSets {
  /** The least member of the set that `i` is in. */
  readonly first: (i: number) => number;
  readonly join: (a: number, b: number) => void;
}

/** Every number in a set of its own. */
export function joinedSets(count: number): JoinedSets {
  const parent = new Int32Array(count);
  for (let i = 0; i < count; i++) parent[i] = i;
  const first = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  const join = (a: number, b: number): void => {
    const p = first(a);
    const q = first(b);
    if (p < q) parent[q] = p;
    else parent[p] = q;
  };
  return { first, join };
}
