const STEPS = 60_000;

/**
 * A good cover by weighted local search: a cover loses a column, then columns are swapped, elements that stay bare
 * weighing ever more, until it is a cover again; and so on for a fixed number of swaps.
 */
export function searchCover(elements: number, columns: readonly (readonly number[])[]): number[] {
  const holders: number[][] = Array.from({ length: elements }, () => []);
  columns.forEach((column, c) => {
    for (const e of column) holders[e]?.push(c);
  });
  const weight = new Int32Array(elements).fill(1);
  const times = new Int32Array(elements);
  const taken = new Uint8Array(columns.length);
  /** What a column would add, or takes away with it, in weight of bare elements. */
  const score = Int32Array.from(columns, ({ length }) => length);
  const moved = new Int32Array(columns.length);
  const bare = new Set<number>(weight.keys());
  const add = (c: number): void => {
    taken[c] = 1;
    score[c] = 0;
    for (const e of columns[c] as readonly number[]) {
      const n = times[e] as number;
      times[e] = n + 1;
      const w = weight[e] as number;
      if (n === 0) {
        bare.delete(e);
        score[c] = (score[c] as number) + w;
        for (const o of holders[e] as number[]) if (o !== c) score[o] = (score[o] as number) - w;
      } else if (n === 1) {
        for (const o of holders[e] as number[]) if (o !== c && taken[o]) score[o] = (score[o] as number) - w;
      }
    }
  };
  const remove = (c: number): void => {
    taken[c] = 0;
    score[c] = 0;
    for (const e of columns[c] as readonly number[]) {
      const n = times[e] as number;
      times[e] = n - 1;
      const w = weight[e] as number;
      if (n === 1) {
        bare.add(e);
        for (const o of holders[e] as number[]) score[o] = (score[o] as number) + w;
      } else if (n === 2) {
        for (const o of holders[e] as number[]) if (o !== c && taken[o]) score[o] = (score[o] as number) + w;
      }
    }
  };
  const pick = (from: Iterable<number>, isIn: 0 | 1, most: boolean, not = -1): number => {
    let best = -1;
    for (const c of from) {
      if (taken[c] !== isIn || c === not) continue;
      const gain = best < 0 ? 0 : (score[c] as number) - (score[best] as number);
      if (best < 0 || (most ? gain > 0 : gain < 0) || (gain === 0 && (moved[c] as number) < (moved[best] as number)))
        best = c;
    }
    return best;
  };
  const all = columns.map((_, c) => c);
  while (bare.size > 0) add(pick(all, 0, true));
  let best = all.filter((c) => taken[c]);
  let last = -1;
  for (let step = 1; step <= STEPS; step++) {
    while (bare.size === 0) {
      best = all.filter((c) => taken[c]);
      if (best.length === 1) return best;
      remove(pick(all, 1, false));
    }
    const out = pick(all, 1, false, last);
    if (out >= 0) {
      remove(out);
      moved[out] = step;
    }
    const wanted = [...bare][step % bare.size] as number;
    const into = pick(holders[wanted] as number[], 0, true, out);
    const c = into < 0 ? out : into;
    add(c);
    moved[c] = step;
    last = c;
    for (const e of bare) {
      weight[e] = (weight[e] as number) + 1;
      for (const o of holders[e] as number[]) score[o] = (score[o] as number) + 1;
    }
  }
  return best;
}
