/**
 * The nearest point to the first `count` values that has no negative entry and sums to at most `total` (zero or more),
 * in place: what is over is taken from all alike, and from who has not so much all of it (Michelot 1986).
 */
export function nearestShares(values: Float64Array, count: number, total: number): void {
  let all = 0;
  for (let i = 0; i < count; i++) all += Math.max(0, values[i] as number);
  let level = 0;
  // Each turn raises the level past one value more at least, and with it ends.
  for (let turn = 0; turn <= count && all > total; turn++) {
    let sum = 0;
    let over = 0;
    for (let i = 0; i < count; i++) {
      const value = values[i] as number;
      if (value <= level) continue;
      sum += value;
      over++;
    }
    const next = over === 0 ? level : (sum - total) / over;
    if (next <= level) break;
    level = next;
  }
  for (let i = 0; i < count; i++) values[i] = Math.max(0, (values[i] as number) - level);
}
