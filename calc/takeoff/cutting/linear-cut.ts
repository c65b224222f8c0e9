import { type Budget, isSpent } from './budget.ts';
import { knapsack } from './knapsack.ts';
import type { Pattern, StockProblem } from './stock-problem.ts';

export interface LinearCut {
  /** Patterns in the optimal basis with how often each is cut; fractions. */
  readonly uses: readonly { readonly pattern: Pattern; readonly times: number }[];
  /** Proved: no cutting plan uses fewer stocks than this real number. */
  readonly bound: number;
}

const EPS = 1e-9;

/**
 * The linear relaxation of the cutting-stock problem by column generation (Gilmore and Gomory 1961): a revised simplex
 * with a dense basis inverse, new patterns priced by the knapsack. The bound is Farley's, safe at every iteration.
 * `pool` collects the patterns found, for the next call on a smaller demand.
 */
export function linearCut(problem: StockProblem, pool: Pattern[], budget: Budget, target = 0): LinearCut {
  const { capacity, sizes, wanted } = problem;
  const m = sizes.length;
  const inverse = new Float64Array(m * m);
  const basis: { pattern: Pattern; cost: number }[] = [];
  const x = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    const copies = Math.min(wanted[i] as number, Math.floor(capacity / (sizes[i] as number)));
    inverse[i * m + i] = 1 / copies;
    x[i] = (wanted[i] as number) / copies;
    basis.push({ pattern: sizes.map((_, k) => (k === i ? copies : 0)), cost: 1 });
  }
  const prices = new Float64Array(m);
  const column = new Float64Array(m);
  let bound = 0;

  for (let round = 0; round < 50 * m + 1000 && !isSpent(budget); round++) {
    budget.left -= 4 * m * m;
    for (let k = 0; k < m; k++) {
      let sum = 0;
      for (let i = 0; i < m; i++) sum += (basis[i] as { cost: number }).cost * (inverse[i * m + k] as number);
      prices[k] = sum;
    }
    const entering = price(problem, prices, pool, budget, (proved) => {
      bound = Math.max(bound, proved);
    });
    // A bound that rounds up to what is already known needs no better prices.
    if (!entering || (target > 0 && Math.ceil(bound - 1e-7) >= target)) break;
    for (let i = 0; i < m; i++) {
      let sum = 0;
      for (let k = 0; k < m; k++) sum += (inverse[i * m + k] as number) * (entering.pattern[k] as number);
      column[i] = sum;
    }
    let leaving = -1;
    let step = Number.POSITIVE_INFINITY;
    for (let i = 0; i < m; i++)
      if ((column[i] as number) > EPS) {
        const ratio = (x[i] as number) / (column[i] as number);
        if (ratio < step - 1e-12) {
          step = ratio;
          leaving = i;
        }
      }
    if (leaving < 0) break;
    pivot(inverse, x, column, leaving, step, m);
    basis[leaving] = entering;
  }
  const uses = basis.flatMap(({ pattern, cost }, i) =>
    cost > 0 && (x[i] as number) > EPS ? [{ pattern, times: x[i] as number }] : [],
  );
  return { uses, bound };
}

/** The column to enter: a surplus, a known pattern, or a new one; undefined where none improves. */
function price(
  problem: StockProblem,
  prices: Float64Array,
  pool: Pattern[],
  budget: Budget,
  proved: (bound: number) => void,
): { pattern: Pattern; cost: number } | undefined {
  const { sizes, wanted } = problem;
  const m = sizes.length;
  let lowest = 0;
  for (let i = 1; i < m; i++) if ((prices[i] as number) < (prices[lowest] as number)) lowest = i;
  if ((prices[lowest] as number) < -EPS) return { pattern: sizes.map((_, k) => (k === lowest ? -1 : 0)), cost: 0 };
  for (const pattern of pool) {
    budget.left -= m;
    let worth = 0;
    for (let i = 0; i < m; i++) worth += Math.min(pattern[i] as number, wanted[i] as number) * (prices[i] as number);
    if (worth > 1 + 1e-7) return { pattern: pattern.map((n, i) => Math.min(n, wanted[i] as number)), cost: 1 };
  }
  const { pattern, value, upper } = knapsack(problem, prices, budget);
  let dual = 0;
  for (let i = 0; i < m; i++) dual += Math.max(0, prices[i] as number) * (wanted[i] as number);
  proved(dual / Math.max(1, upper));
  if (value <= 1 + 1e-7) return undefined;
  pool.push(pattern);
  return { pattern, cost: 1 };
}

function pivot(
  inverse: Float64Array,
  x: Float64Array,
  column: Float64Array,
  leaving: number,
  step: number,
  m: number,
): void {
  const by = column[leaving] as number;
  for (let k = 0; k < m; k++) inverse[leaving * m + k] = (inverse[leaving * m + k] as number) / by;
  for (let i = 0; i < m; i++) {
    if (i === leaving) continue;
    const times = column[i] as number;
    x[i] = Math.max(0, (x[i] as number) - times * step);
    if (times === 0) continue;
    for (let k = 0; k < m; k++)
      inverse[i * m + k] = (inverse[i * m + k] as number) - times * (inverse[leaving * m + k] as number);
  }
  x[leaving] = step;
}
