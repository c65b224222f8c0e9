/** What a stretch of an order costs, from one place in it up to another, excluded; infinite where it cannot be. */
export type StretchCost = (from: number, to: number) => number;

/**
 * The cheapest way to cut an order of so many into stretches, each a piece of the order: by dynamic programming, so that
 * no other way to cut it is cheaper. A single one that cannot be by itself is a stretch all the same. Gives where each
 * stretch begins and ends, and the sum.
 * @param most in one stretch
 */
export function cutInto(
  count: number,
  most: number,
  cost: StretchCost,
): { readonly stretches: readonly (readonly [from: number, to: number])[]; readonly cost: number } {
  const best = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const begins = new Int32Array(count + 1);
  best[0] = 0;
  for (let to = 1; to <= count; to++)
    for (let from = to - 1; from >= Math.max(0, to - most); from--) {
      const own = cost(from, to);
      const sum = best[from]! + (Number.isFinite(own) || to - from > 1 ? own : ALONE);
      if (sum < best[to]! - 1e-9) {
        best[to] = sum;
        begins[to] = from;
      }
    }
  const stretches: [number, number][] = [];
  for (let to = count; to > 0; to = begins[to]!) stretches.unshift([begins[to]!, to]);
  return { stretches, cost: best[count]! };
}

/** What a single one counts as that cannot be by itself: more than any that can. */
const ALONE = 1e12;
