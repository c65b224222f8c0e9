import type { Pattern, StockProblem } from './stock-problem.ts';

/** Places each piece, largest first, in the first stock it fits. */
export const firstFit = (problem: StockProblem): Pattern[] =>
  fit(problem, (left, size) => left.findIndex((room) => room >= size));

/** Places each piece, largest first, in the fullest stock it fits. */
export const bestFit = (problem: StockProblem): Pattern[] =>
  fit(problem, (left, size) => {
    let best = -1;
    left.forEach((room, stock) => {
      if (room >= size && (best < 0 || room < (left[best] as number))) best = stock;
    });
    return best;
  });

function fit(problem: StockProblem, choose: (left: readonly number[], size: number) => number): Pattern[] {
  const left: number[] = [];
  const stocks: number[][] = [];
  problem.sizes.forEach((size, i) => {
    for (let n = problem.wanted[i] as number; n > 0; n--) {
      let stock = choose(left, size);
      if (stock < 0) {
        stock = left.push(problem.capacity) - 1;
        stocks.push(problem.sizes.map(() => 0));
      }
      left[stock] = (left[stock] as number) - size;
      const pattern = stocks[stock] as number[];
      pattern[i] = (pattern[i] as number) + 1;
    }
  });
  return stocks;
}
