import type { HomeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import type { TurningWays } from './turning-ways.ts';

/** Edges of each circuit's way, the root's first. */
export type Ways = readonly (readonly number[])[];

/** What ways are laid on. */
export interface LaidOn {
  readonly graph: HomeGraph;
  readonly turning: TurningWays;
  readonly terminals: readonly number[];
  readonly price: SharedPrice;
  /** What a turn costs, in dollars a conduit. */
  readonly turnPrice: number;
}

/** At most so many circuits are laid anew at once, where no line is given up. */
const MOST_OUT = 8;

/** Of each edge how many ways go along it. */
export function carriedBy(graph: HomeGraph, ways: Ways): Int32Array {
  const carried = new Int32Array(graph.edges);
  for (const way of ways) for (const e of way) carried[e] = carried[e]! + 1;
  return carried;
}

/** Dollars that ways come to by the price a foot, with one for turns. */
export function roughPrice({ graph, turning, price, turnPrice }: LaidOn, ways: Ways): number {
  const carried = carriedBy(graph, ways);
  let sum = 0;
  for (let e = 0; e < graph.edges; e++)
    if (carried[e]! > 0)
      sum +=
        graph.length[e]! *
        (price.raceway * graph.multiplier[e]! +
          price.conductor * carried[e]! +
          price.conduit * Math.ceil(carried[e]! / price.circuitsPerConduit));
  return sum + (turnPrice / price.circuitsPerConduit) * ways.reduce((all, way) => all + turning.turns(way), 0);
}

/** Some of the circuits laid anew by prices that chance has moved; null where one has no way. */
export function someAnew(on: LaidOn, ways: Ways, random: () => number): Ways | null {
  const { turning, turnPrice } = on;
  const lean = Math.floor(random() * ways.length);
  const kind = random();
  const spread = [0, 0.1, 0.3][Math.floor(random() * 3)]!;
  const turn = turnPrice * [0, 0.4, 1, 2][Math.floor(random() * 4)]!;
  const factor = new Float64Array(turning.lines);
  for (let i = 0; i < factor.length; i++) factor[i] = 1 + spread * (2 * random() - 1);
  if (kind >= 0.4) return laid(on, ways, nearby(ways, lean, kind < 0.6 ? 2 : MOST_OUT, random), factor, turn, random);
  const way = ways[lean]!;
  const edge = way[Math.floor(random() * way.length)];
  if (edge === undefined) return null;
  const out = alongside(turning, ways, edge, random);
  factor[turning.lineOf[edge]!] = 50;
  return laid(on, ways, out, factor, turn, random);
}

/** The circuits that go along an edge, or anywhere along its line. */
function alongside(turning: TurningWays, ways: Ways, edge: number, random: () => number): readonly number[] {
  const line = turning.lineOf[edge]!;
  const isWhole = random() < 0.5;
  return ways.flatMap((own, k) =>
    (isWhole ? own.some((e) => turning.lineOf[e] === line) : own.includes(edge)) ? [k] : [],
  );
}

/** A circuit and some of those that share most of its way. */
function nearby(ways: Ways, lean: number, most: number, random: () => number): readonly number[] {
  const count = Math.min(ways.length, 1 + Math.floor(random() * most));
  const own = new Set(ways[lean]!);
  const nearness = ways.map((way, k) =>
    k === lean ? Number.POSITIVE_INFINITY : way.filter((e) => own.has(e)).length + 3 * random(),
  );
  return ways
    .map((_, k) => k)
    .sort((a, b) => nearness[b]! - nearness[a]! || a - b)
    .slice(0, count);
}

/** Circuits taken out and laid one after another beside the rest; null where one has no way. */
function laid(
  { graph, turning, terminals, price }: LaidOn,
  ways: Ways,
  out: readonly number[],
  factor: Float64Array,
  turn: number,
  random: () => number,
): Ways | null {
  const next = ways.map((way, k) => (out.includes(k) ? [] : way));
  const carried = carriedBy(graph, next);
  const order = random() < 0.5 ? out : shuffled(out, random);
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

const shuffled = (places: readonly number[], random: () => number): readonly number[] =>
  places
    .map((k) => ({ k, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ k }) => k);
