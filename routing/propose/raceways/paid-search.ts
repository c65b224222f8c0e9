import type { Point3 } from '../../site/site.ts';
import type { HomeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import { turningWays } from './turning-ways.ts';
import { type LaidOn, roughPrice, someAnew, type Ways } from './ways-anew.ts';

/** What ways come to once they are drawn and planned. */
export interface Judged {
  readonly cost: number;
  /** Failing findings; worked when they are asked for. */
  readonly fails: () => number;
}

export interface PaidProblem {
  readonly graph: HomeGraph;
  readonly points: readonly Point3[];
  readonly root: number;
  readonly terminals: readonly number[];
  /** By which new ways are laid before they are judged. */
  readonly price: SharedPrice;
  /** Which edges come to be drawn. */
  readonly isNew: readonly boolean[];
  readonly judge: (ways: Ways) => Judged;
}

/** Ways, and what they come to. */
interface Found {
  readonly ways: Ways;
  readonly cost: number;
}

/** So many tries at most for each that is judged: others come to what was judged before, or to much more. */
const TRIES = 6;
/** What is dearer by so much before it is judged is not judged. */
const FAR_OFF = 1.06;
/** After so many that were no better, it goes on from the best. */
const PATIENCE = 40;
/** What is dearer by up to such a share is taken as a place to go on from. */
const WORSE = 0.004;

/**
 * Goes on from ways that were found by a price a foot, by what they come to when they are planned: circuits near one
 * another, or all on a line, are taken out and laid anew by prices that chance has moved, with a price for turns. What is
 * cheaper and fails no more is kept. The steps do not depend on how many there are to be: more of them never give what is
 * dearer. The same input gives the same answer.
 * @param pool the first one is what the others must not fail more than
 * @param rounds how many are judged beside those of the pool
 */
export function searchPaid(
  problem: PaidProblem,
  pool: readonly Ways[],
  rounds: number,
  mayGoOn: () => boolean,
  tell: (done: number) => void = () => {},
): Found {
  const { graph, points, root, terminals, price, judge } = problem;
  const on: LaidOn = {
    graph,
    turning: turningWays(graph, points, root),
    terminals,
    price,
    turnPrice: 3 * price.conduit,
  };
  const random = steady(7_307);
  const judged = judge(pool[0]!);
  const isSound = (one: Judged): boolean => one.fails() <= judged.fails();
  const seen = drawnAlike(problem.isNew);
  seen.add(pool[0]!);
  let best = bestOf(problem, pool, judged.cost, seen, isSound, mayGoOn);
  let now = best;
  let limit = FAR_OFF * roughPrice(on, best.ways);
  let done = 0;
  let stale = 0;
  for (let tries = 0; tries < TRIES * rounds && done < rounds && terminals.length > 0; tries++) {
    const ways = someAnew(on, now.ways, random);
    if (ways === null || seen.has(ways) || roughPrice(on, ways) > limit) continue;
    if (!mayGoOn()) break;
    seen.add(ways);
    tell(done++);
    const one = judge(ways);
    const slack = WORSE * best.cost * random() ** 3;
    if (one.cost < now.cost + slack && isSound(one)) now = { ways, cost: one.cost };
    if (now.cost < best.cost - 1e-6) {
      best = now;
      stale = 0;
      limit = Math.max(limit, FAR_OFF * roughPrice(on, best.ways));
    } else if (++stale % PATIENCE === 0) now = best;
  }
  return best;
}

/** The cheapest of the pool that fails no more than its first one. */
function bestOf(
  { judge }: PaidProblem,
  pool: readonly Ways[],
  cost: number,
  seen: Seen,
  isSound: (one: Judged) => boolean,
  mayGoOn: () => boolean,
): Found {
  let best: Found = { ways: pool[0]!, cost };
  for (const ways of pool.slice(1)) {
    if (seen.has(ways) || !mayGoOn()) continue;
    seen.add(ways);
    const other = judge(ways);
    if (other.cost < best.cost - 1e-6 && isSound(other)) best = { ways, cost: other.cost };
  }
  return best;
}

interface Seen {
  readonly has: (ways: Ways) => boolean;
  readonly add: (ways: Ways) => void;
}

/** Ways that were judged: those are alike that draw the same new edges. */
function drawnAlike(isNew: readonly boolean[]): Seen {
  const keys = new Set<string>();
  const keyOf = (ways: Ways): string =>
    [...new Set(ways.flat())]
      .filter((e) => isNew[e])
      .sort((a, b) => a - b)
      .join(' ');
  return { has: (ways) => keys.has(keyOf(ways)), add: (ways) => void keys.add(keyOf(ways)) };
}

/** Numbers from 0 up to 1 from a fixed start. */
function steady(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
