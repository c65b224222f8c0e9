const STEPS = 600;

/**
 * A proved lower bound on how many columns a cover takes: the Lagrangian dual of the covering program, its multipliers
 * improved by subgradient steps (Held, Wolfe and Crowder 1974), rounded up as a count is whole.
 */
export function coverBound(elements: number, columns: readonly (readonly number[])[]): number {
  const price = new Float64Array(elements);
  const degree = new Int32Array(elements);
  for (const column of columns) for (const e of column) degree[e] = (degree[e] as number) + 1;
  const widest = columns.reduce((most, { length }) => Math.max(most, length), 1);
  price.fill(1 / widest);
  const slope = new Float64Array(elements);
  let best = elements / widest;
  let pace = 1;
  let stale = 0;
  for (let step = 0; step < STEPS && pace > 1e-4; step++) {
    let value = 0;
    for (let e = 0; e < elements; e++) value += price[e] as number;
    slope.fill(1);
    for (const column of columns) {
      let left = 1;
      for (const e of column) left -= price[e] as number;
      if (left >= 0) continue;
      value += left;
      for (const e of column) slope[e] = (slope[e] as number) - 1;
    }
    if (value > best + 1e-7) {
      best = value;
      stale = 0;
    } else if (++stale > 20) {
      pace /= 2;
      stale = 0;
    }
    let norm = 0;
    for (const s of slope) norm += s * s;
    if (norm === 0) break;
    const size = (pace * (1.05 * best + 1 - value)) / norm;
    for (let e = 0; e < elements; e++) price[e] = Math.max(0, (price[e] as number) + size * (slope[e] as number));
  }
  return Math.ceil(best - 1e-6);
}
