import { SILENT, type Tell } from '../../words/explain.ts';
import { martelloTothBound } from './bounds.ts';
import { type Budget, CUT_STEPS, isSpent } from './budget.ts';
import { completeWith } from './complete.ts';
import { dive } from './dive.ts';
import { bestFit, firstFit } from './fit.ts';
import { linearCut } from './linear-cut.ts';
import { type Pattern, problemOf, SAME, type StockProblem } from './stock-problem.ts';

export interface CutWish {
  /** Length of one stock (a stick, a reel). */
  readonly stock: number;
  /** Lengths wanted, in the same unit. */
  readonly pieces: readonly number[];
  /** Length lost at each cut; 0 where absent. */
  readonly kerf?: number;
  /** Steps that the search may take; enough for the hardest published instances where absent. */
  readonly steps?: number;
}

export interface CutPlan {
  /** How many stocks are used. */
  readonly stocks: number;
  /** Proved: no plan uses fewer. Equal to `stocks` where the plan is proved best. */
  readonly bound: number;
  /** The pieces of each stock, largest first. */
  readonly plan: readonly (readonly number[])[];
}

const DIVES = 24;
const MOST_NODES = 400_000;

/** More pieces than this are not searched one by one: each is a call within the one before. */
const MOST_SEARCHED = 2000;

/** More distinct sizes than this and the linear relaxation is not worked: the simpler bound stands. */
const MOST_SIZES = 400;

/**
 * The fewest equal stocks that give all the pieces, and the proof: fitting (first and best fit, decreasing) against the
 * Martello-Toth bound; where they differ, the linear relaxation by column generation, plans rounded from it, and at last
 * an exact search. All of them share one budget of steps: where it is spent, the best plan found stands beside the bound
 * proved. A kerf is lost with every piece but the one that ends at the end of its stock, which is the same as cutting
 * pieces longer by a kerf from a stock longer by a kerf.
 * @throws RangeError where a length is not positive or a piece is longer than the stock
 * @example
 * // Hand-worked: 6 + 4 and 7 + 3 fill two 10 ft sticks, and 20 ft need two
 * cut({ stock: 10, pieces: [3, 7, 4, 6] }) // { stocks: 2, bound: 2, plan: [[7, 3], [6, 4]] }
 */
export function cut({ stock, pieces, kerf = 0, steps = CUT_STEPS }: CutWish, tell: Tell = SILENT): CutPlan {
  if (!(stock > 0)) throw new RangeError(`a stock must be longer than 0, got ${stock}`);
  if (!(kerf >= 0)) throw new RangeError(`a kerf must be 0 or more, got ${kerf}`);
  for (const piece of pieces) {
    if (!(piece > 0)) throw new RangeError(`a piece must be longer than 0, got ${piece}`);
    if (piece > stock * (1 + SAME)) throw new RangeError(`a piece of ${piece} is longer than the stock of ${stock}`);
  }
  const problem = cutProblem(stock, pieces, kerf);
  const { patterns, bound, proof } = fewest(problem, { left: steps });
  const plan = hand(patterns, problem, pieces);
  tell(() => ({
    find: 'stocks',
    formula: 'fewest stocks that give every piece; the bound proves that no fewer do',
    values: {
      stock,
      kerf,
      pieces: pieces.length,
      'sum of pieces': pieces.reduce((sum, piece) => sum + piece, 0),
      bound,
    },
    result: plan.length,
    source: proof,
  }));
  return { stocks: plan.length, bound, plan };
}

interface Fewest {
  readonly patterns: readonly Pattern[];
  readonly bound: number;
  readonly proof: string;
}

/** The better of first and best fit. */
const fittedTo = (problem: StockProblem): Pattern[] =>
  [firstFit(problem), bestFit(problem)].reduce((a, b) => (b.length < a.length ? b : a));

/** How many stocks `cut` begins with, by fitting alone: its plan takes no more. */
export const fitCut = (stock: number, pieces: readonly number[], kerf: number): number =>
  pieces.length === 0 ? 0 : fittedTo(cutProblem(stock, pieces, kerf)).length;

const cutProblem = (stock: number, pieces: readonly number[], kerf: number): StockProblem =>
  problemOf(
    stock + kerf,
    pieces.map((piece) => piece + kerf),
  );

function fewest(problem: StockProblem, budget: Budget): Fewest {
  if (problem.sizes.length === 0) return { patterns: [], bound: 0, proof: 'nothing to cut' };
  let patterns = fittedTo(problem);
  let bound = martelloTothBound(problem);
  if (bound >= patterns.length) return { patterns, bound: patterns.length, proof: 'Martello and Toth, bound L2' };

  if (problem.sizes.length <= MOST_SIZES) {
    const pool: Pattern[] = [...new Map(patterns.map((pattern) => [pattern.join(), pattern])).values()];
    bound = Math.max(bound, Math.ceil(linearCut(problem, pool, budget, patterns.length).bound - 1e-7));
    for (let turn = 0; turn < DIVES && patterns.length > bound && !isSpent(budget); turn++) {
      patterns = dive(problem, pool, patterns.length - 1, turn, budget) ?? patterns;
    }
    if (patterns.length <= bound) return { patterns, bound, proof: 'Gilmore and Gomory, column generation' };
  }
  const isFew = problem.wanted.reduce((sum, count) => sum + count, 0) <= MOST_SEARCHED;
  while (bound < patterns.length && isFew) {
    const plan = completeWith(problem, bound, MOST_NODES, budget);
    if (plan === undefined) return { patterns, bound, proof: 'not proved best: the search was cut short' };
    if (plan) return { patterns: plan, bound, proof: 'exact search' };
    bound++;
  }
  const proof = isFew ? 'exact search' : 'not proved best: too many pieces to search';
  return { patterns, bound, proof };
}

/** Deals the pieces as they were given (not as grouped) to the patterns. */
function hand(patterns: readonly Pattern[], problem: StockProblem, pieces: readonly number[]): number[][] {
  const sorted = [...pieces].sort((a, b) => b - a);
  let from = 0;
  const piles = problem.wanted.map((count) => {
    from += count;
    return sorted.slice(from - count, from);
  });
  return patterns.map((pattern) => pattern.flatMap((count, i) => (piles[i] as number[]).splice(0, count)));
}
