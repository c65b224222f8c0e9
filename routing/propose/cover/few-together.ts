/**
 * The widest sets that a place can serve with room for `most`: the whole of what it reaches where that fits, else every
 * choice of so many of it. Each set once, in order of first appearance, elements ascending.
 */
export function fewTogether(reached: readonly (readonly number[])[], most: number): number[][] {
  if (!(most >= 1)) throw new RangeError(`room for ${most}`);
  const seen = new Set<string>();
  const sets: number[][] = [];
  const put = (set: number[]): void => {
    const key = set.join(' ');
    if (set.length === 0 || seen.has(key)) return;
    seen.add(key);
    sets.push(set);
  };
  for (const all of reached) {
    const sorted = [...all].sort((a, b) => a - b);
    for (const set of choices(sorted, Math.min(most, sorted.length))) put(set);
  }
  return sets;
}

function* choices(from: readonly number[], count: number, start = 0): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (let i = start; i + count <= from.length; i++)
      for (const rest of choices(from, count - 1, i + 1)) yield [from[i] as number, ...rest];
}
