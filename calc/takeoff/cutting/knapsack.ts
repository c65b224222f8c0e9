import { type Budget, isSpent } from './budget.ts';
import type { StockProblem } from './stock-problem.ts';

export interface KnapsackAnswer {
  /** Copies of each size in the best filling found. */
  readonly pattern: number[];
  readonly value: number;
  /** No filling is worth more than this; equals `value` where the search ran to its end. */
  readonly upper: number;
}

const MOST_NODES = 200_000;

/**
 * The most valuable filling of one stock, sizes worth `worth` each and at most `wanted` of each: depth-first branch and
 * bound in order of worth per length, with the linear relaxation as bound (Dantzig). Lengths may be any positive reals.
 */
export function knapsack(
  { capacity, sizes, wanted }: StockProblem,
  worth: ArrayLike<number>,
  budget: Budget,
): KnapsackAnswer {
  const order = sizes
    .map((_, i) => i)
    .filter((i) => (worth[i] as number) > 1e-12 && (wanted[i] as number) > 0)
    .sort((a, b) => (worth[b] as number) / (sizes[b] as number) - (worth[a] as number) / (sizes[a] as number));
  const counts = new Int32Array(sizes.length);
  let best: Int32Array = counts.slice();
  let value = 0;
  let nodes = 0;

  const relaxed = (from: number, room: number): number => {
    let sum = 0;
    for (let k = from; k < order.length && room > 0; k++) {
      budget.left--;
      const i = order[k] as number;
      const length = (wanted[i] as number) * (sizes[i] as number);
      if (length <= room) {
        sum += (wanted[i] as number) * (worth[i] as number);
        room -= length;
      } else return sum + (room / (sizes[i] as number)) * (worth[i] as number);
    }
    return sum;
  };

  const search = (k: number, room: number, sum: number): void => {
    if (sum > value + 1e-12) {
      value = sum;
      best = counts.slice();
    }
    if (k === order.length || nodes++ > MOST_NODES || isSpent(budget) || sum + relaxed(k, room) <= value + 1e-12)
      return;
    const i = order[k] as number;
    for (let n = Math.min(wanted[i] as number, Math.floor(room / (sizes[i] as number))); n >= 0; n--) {
      counts[i] = n;
      search(k + 1, room - n * (sizes[i] as number), sum + n * (worth[i] as number));
    }
    counts[i] = 0;
  };
  const top = relaxed(0, capacity);
  search(0, capacity, 0);
  return { pattern: [...best], value, upper: nodes > MOST_NODES || isSpent(budget) ? Math.max(top, value) : value };
}
