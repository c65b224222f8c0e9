import { type Budget, isSpent } from './budget.ts';
import { completeWith } from './complete.ts';
import { linearCut } from './linear-cut.ts';
import type { Pattern, StockProblem } from './stock-problem.ts';

/** With this many pieces left the rest is searched exactly. */
const FEW = 45;
const FEW_NODES = 20_000;

/**
 * A whole-number cutting plan of `target` stocks from the linear one: cut what the relaxation cuts whole times, else the
 * pattern it likes most, and solve again for what is still wanted; the last pieces by exact search. At step `turn` (if
 * over 0) the second choice is taken, so that each turn dives elsewhere.
 * @returns null where this dive finds none, or what there is to spend is spent
 */
export function dive(
  problem: StockProblem,
  pool: Pattern[],
  target: number,
  turn: number,
  budget: Budget,
): Pattern[] | null {
  const plan: Pattern[] = [];
  let wanted = [...problem.wanted];
  for (let step = 1; !isSpent(budget); step++) {
    budget.left -= pool.length * problem.sizes.length;
    const kept = problem.sizes.map((_, i) => i).filter((i) => (wanted[i] as number) > 0);
    if (kept.length === 0) return plan;
    const rest: StockProblem = {
      capacity: problem.capacity,
      sizes: kept.map((i) => problem.sizes[i] as number),
      wanted: kept.map((i) => wanted[i] as number),
    };
    const widen = (pattern: Pattern): Pattern => {
      const wide = problem.sizes.map(() => 0);
      kept.forEach((i, k) => {
        wide[i] = pattern[k] as number;
      });
      return wide;
    };
    if (rest.wanted.reduce((sum, n) => sum + n, 0) <= FEW) {
      const last = completeWith(rest, target - plan.length, FEW_NODES, budget);
      if (last) return [...plan, ...last.map(widen)];
      if (last === null) return null;
    }
    const local = pool
      .map((pattern) => kept.map((i) => pattern[i] as number))
      .filter((pattern) => pattern.some((n) => n > 0));
    const before = local.length;
    const { uses, bound } = linearCut(rest, local, budget);
    for (const pattern of local.slice(before)) pool.push(widen(pattern));
    if (plan.length + Math.ceil(bound - 1e-7) > target) return null;

    const liked = [...uses].sort((a, b) => b.times - a.times);
    const whole = step === turn ? [] : liked.filter(({ times }) => times >= 1 - 1e-6);
    const chosen = whole.length > 0 ? whole : liked.slice(step === turn && liked.length > 1 ? 1 : 0).slice(0, 1);
    for (const { pattern, times } of chosen)
      for (let n = Math.max(1, Math.floor(times + 1e-6)); n > 0; n--) {
        const useful = widen(pattern).map((count, i) => Math.min(count, wanted[i] as number));
        if (!useful.some((count) => count > 0)) break;
        wanted = wanted.map((count, i) => count - (useful[i] as number));
        plan.push(useful);
      }
    if (plan.length > target) return null;
  }
  return null;
}
