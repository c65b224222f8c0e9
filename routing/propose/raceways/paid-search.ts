import type { Point3 } from '../../site/site.ts';
import type { HomeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import { turningWays } from './turning-ways.ts';

/** Edges of each circuit's way, the root's first. */
export type Ways = readonly (readonly number[])[];

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

/** So many tries at most for each that is judged: others come to what was judged before, or to much more. */
const TRIES = 6;
/** What is dearer by so much before it is judged is not judged. */
const FAR_OFF = 1.06;
/** After so many that were no better, it goes on from the best. */
const PATIENCE = 40;
/** What is dearer by up to such a share is taken as a place to go on from. */
const WORSE = 0.004;
/** At most so many circuits are laid anew at once, where no line is given up. */
const MOST_OUT = 8;

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
): { readonly ways: Ways; readonly cost: number } {
  const { graph, terminals, price, isNew, judge } = problem;
  const turning = turningWays(graph, problem.points, problem.root);
  const random = steady(7_307);
  const seen = new Set<string>();
  const keyOf = (ways: Ways): string =>
    [...new Set(ways.flat())]
      .filter((e) => isNew[e])
      .sort((a, b) => a - b)
      .join(' ');
  const first = pool[0]!;
  const judged = judge(first);
  seen.add(keyOf(first));
  let best = { ways: first, cost: judged.cost };
  let now = best;
  const isSound = (one: Judged): boolean => one.fails() <= judged.fails();
  for (const ways of pool.slice(1)) {
    const key = keyOf(ways);
    if (seen.has(key) || !mayGoOn()) continue;
    seen.add(key);
    const other = judge(ways);
    if (other.cost < best.cost - 1e-6 && isSound(other)) best = { ways, cost: other.cost };
  }
  now = best;
  const turnPrice = 3 * price.conduit;
  const roughly = (carried: Int32Array, ways: Ways): number => {
    let sum = 0;
    for (let e = 0; e < graph.edges; e++)
      if (carried[e]! > 0)
        sum +=
          graph.length[e]! *
          (price.raceway * graph.multiplier[e]! +
            price.conductor * carried[e]! +
            price.conduit * Math.ceil(carried[e]! / price.circuitsPerConduit));
    return sum + (turnPrice / price.circuitsPerConduit) * ways.reduce((all, way) => all + turning.turns(way), 0);
  };
  const rough = (ways: Ways): number => roughly(carriedBy(graph, ways), ways);
  let limit = FAR_OFF * rough(best.ways);
  let done = 0;
  let stale = 0;
  for (let tries = 0; tries < TRIES * rounds && done < rounds && terminals.length > 0; tries++) {
    const ways = changed(now.ways);
    if (ways === null) continue;
    const key = keyOf(ways);
    if (seen.has(key) || rough(ways) > limit) continue;
    if (!mayGoOn()) break;
    seen.add(key);
    tell(done++);
    const one = judge(ways);
    const slack = WORSE * best.cost * random() ** 3;
    if (one.cost < now.cost + slack && isSound(one)) now = { ways, cost: one.cost };
    if (now.cost < best.cost - 1e-6) {
      best = now;
      stale = 0;
      limit = Math.max(limit, FAR_OFF * rough(best.ways));
    } else if (++stale % PATIENCE === 0) now = best;
  }
  return best;

  /** Some of the circuits laid anew; null where one has no way. */
  function changed(ways: Ways): Ways | null {
    const lean = Math.floor(random() * ways.length);
    const kind = random();
    const spread = [0, 0.1, 0.3][Math.floor(random() * 3)]!;
    const turn = turnPrice * [0, 0.4, 1, 2][Math.floor(random() * 4)]!;
    const factor = new Float64Array(turning.lines);
    for (let i = 0; i < factor.length; i++) factor[i] = 1 + spread * (2 * random() - 1);
    let out: number[];
    if (kind < 0.4) {
      const way = ways[lean]!;
      const edge = way[Math.floor(random() * way.length)];
      if (edge === undefined) return null;
      const line = turning.lineOf[edge]!;
      const isWhole = random() < 0.5;
      out = ways.flatMap((own, k) =>
        (isWhole ? own.some((e) => turning.lineOf[e] === line) : own.includes(edge)) ? [k] : [],
      );
      factor[line] = 50;
    } else {
      const count = Math.min(ways.length, 1 + Math.floor(random() * (kind < 0.6 ? 2 : MOST_OUT)));
      const own = new Set(ways[lean]!);
      const nearness = ways.map((way, k) =>
        k === lean ? Number.POSITIVE_INFINITY : way.filter((e) => own.has(e)).length + 3 * random(),
      );
      out = ways
        .map((_, k) => k)
        .sort((a, b) => nearness[b]! - nearness[a]! || a - b)
        .slice(0, count);
    }
    const next = ways.map((way, k) => (out.includes(k) ? [] : way));
    const carried = carriedBy(graph, next);
    const order =
      random() < 0.5
        ? out
        : out
            .map((k) => ({ k, at: random() }))
            .sort((a, b) => a.at - b.at)
            .map(({ k }) => k);
    const cost = new Float64Array(graph.edges);
    const weigh = (e: number): void => {
      const q = carried[e]!;
      const foot =
        (q === 0 ? price.raceway * graph.multiplier[e]! : 0) +
        price.conductor +
        (q % price.circuitsPerConduit === 0 ? price.conduit : 0);
      cost[e] = graph.length[e]! * foot * factor[turning.lineOf[e]!]!;
    };
    for (let e = 0; e < graph.edges; e++) weigh(e);
    for (const k of order) {
      const way = turning.way(terminals[k]!, cost, turn);
      if (way === null) return null;
      next[k] = way;
      for (const e of way) carried[e] = carried[e]! + 1;
      // Only where it was laid is the next one's foot another.
      for (const e of way) weigh(e);
    }
    return next;
  }
}

function carriedBy(graph: HomeGraph, ways: Ways): Int32Array {
  const carried = new Int32Array(graph.edges);
  for (const way of ways) for (const e of way) carried[e] = carried[e]! + 1;
  return carried;
}

/** Numbers from 0 up to 1 from a fixed start. */
function steady(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
