import { type Budget, isSpent } from './budget.ts';
import type { Pattern, StockProblem } from './stock-problem.ts';

/**
 * Looks for a plan with just `target` stocks, stock by stock: each holds the largest piece left and a filling that keeps
 * the sum of all waste within what `target` stocks allow (bin completion, after Korf 2002; from memory).
 * @returns the plan; null where there is none; undefined where the search gave up
 */
export function completeWith(
  problem: StockProblem,
  target: number,
  mostNodes: number,
  budget: Budget,
): Pattern[] | null | undefined {
  const { capacity, sizes, wanted } = problem;
  const left = [...wanted];
  const total = sizes.reduce((sum, size, i) => sum + size * (wanted[i] as number), 0);
  const plan: number[][] = [];
  let nodes = 0;

  const next = (spare: number): boolean => {
    const largest = left.findIndex((n) => n > 0);
    if (largest < 0) return true;
    if (plan.length === target) return false;
    const pattern = sizes.map(() => 0);
    pattern[largest] = 1;
    left[largest] = (left[largest] as number) - 1;
    plan.push(pattern);
    const found = fill(largest, capacity - (sizes[largest] as number), spare, pattern);
    if (!found) {
      plan.pop();
      left[largest] = (left[largest] as number) + 1;
    }
    return found;
  };

  const fill = (from: number, room: number, spare: number, pattern: number[]): boolean => {
    if (++nodes > mostNodes || isSpent(budget)) return false;
    for (let i = from; i < sizes.length; i++) {
      budget.left--;
      if ((left[i] as number) === 0 || (sizes[i] as number) > room) continue;
      pattern[i] = (pattern[i] as number) + 1;
      left[i] = (left[i] as number) - 1;
      if (fill(i, room - (sizes[i] as number), spare, pattern)) return true;
      pattern[i] = (pattern[i] as number) - 1;
      left[i] = (left[i] as number) + 1;
    }
    return room <= spare && next(spare - room);
  };

  const found = next(target * capacity - total);
  if (found) return plan;
  return nodes > mostNodes || isSpent(budget) ? undefined : null;
}
