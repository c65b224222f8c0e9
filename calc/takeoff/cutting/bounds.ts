import type { StockProblem } from './stock-problem.ts';

/**
 * Least number of stocks by the second bound of Martello and Toth (Knapsack Problems, 1990, section 8.3; from memory):
 * for each threshold, pieces over half a stock need one each, and what room they leave may not hold the rest.
 */
export function martelloTothBound({ capacity, sizes, wanted }: StockProblem): number {
  let bound = 0;
  const thresholds = [0, ...sizes.filter((size) => size <= capacity / 2)];
  for (const least of thresholds) {
    let alone = 0;
    let over = 0;
    let room = 0;
    let rest = 0;
    sizes.forEach((size, i) => {
      const count = wanted[i] as number;
      if (size > capacity - least) alone += count;
      else if (size > capacity / 2) {
        over += count;
        room += count * (capacity - size);
      } else if (size >= least) rest += count * size;
    });
    bound = Math.max(bound, alone + over + Math.max(0, Math.ceil((rest - room) / capacity - 1e-7)));
  }
  return bound;
}
