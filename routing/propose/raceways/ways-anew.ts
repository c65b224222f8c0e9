import type { HomeGraph } from '../shared/home-graph.ts';
import { conduitsFor, type SharedPrice } from '../shared/shared-cost.ts';
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

/** What is given up costs so many times as much. */
const GIVEN_UP = 50;
/** A line that ways are drawn to costs such a share. */
const DRAWN_TO = 0.3;
/** Of all changes, such a part lays the first circuits where it would be cheapest for all that follow. */
const AHEAD = 0.3;

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
          price.conduit * conduitsFor(carried[e]!, graph.room[e]!, price));
  return sum + (turnPrice / price.circuitsPerConduit) * ways.reduce((all, way) => all + turning.turns(way), 0);
}

/**
 * Some of the circuits laid anew by prices that chance has moved: all through a stretch, or along its line, without it;
 * or some near one another, now and then drawn to a line. Null where one has no way.
 */
export function someAnew(on: LaidOn, ways: Ways, random: () => number): Ways | null {
  const { graph, turning, turnPrice } = on;
  const lean = Math.floor(random() * ways.length);
  const kind = random();
  const spread = [0, 0.1, 0.3][Math.floor(random() * 3)]!;
  const turn = turnPrice * [0, 0.4, 1, 2][Math.floor(random() * 4)]!;
  const line = new Float64Array(turning.lines);
  for (let i = 0; i < line.length; i++) line[i] = 1 + spread * (2 * random() - 1);
  if (kind >= 0.5) {
    const out = nearby(ways, lean, kind < 0.65 ? 2 : MOST_OUT, random);
    if (kind > 0.9) line[turning.lineOf[Math.floor(random() * graph.edges)]!]! *= DRAWN_TO;
    return laid(on, ways, { out, line, shut: -1, turn }, random);
  }
  const way = ways[lean]!;
  const edge = way[Math.floor(random() * way.length)];
  if (edge === undefined) return null;
  if (kind < 0.25) {
    const out = ways.flatMap((own, k) => (own.includes(edge) ? [k] : []));
    return laid(on, ways, { out, line, shut: edge, turn }, random);
  }
  line[turning.lineOf[edge]!] = GIVEN_UP;
  return laid(on, ways, { out: alongside(turning, ways, edge, random), line, shut: -1, turn }, random);
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

/** Which circuits are taken out, and by which prices they get other ways. */
interface Anew {
  readonly out: readonly number[];
  /** Factor on the price of each line. */
  readonly line: Float64Array;
  /** The edge that is given up; -1 for none. */
  readonly shut: number;
  /** Dollars of a turn. */
  readonly turn: number;
}

/** Circuits taken out and laid one after another beside the rest; null where one has no way. */
function laid(
  { graph, turning, terminals, price }: LaidOn,
  ways: Ways,
  { out, line, shut, turn }: Anew,
  random: () => number,
): Ways | null {
  const next = ways.map((way, k) => (out.includes(k) ? [] : way));
  const carried = carriedBy(graph, next);
  const order = random() < 0.5 ? out : shuffled(out, random);
  const cost = new Float64Array(graph.edges);
  /** So many circuits pay for what is not there yet. */
  const weigh = (e: number, sharers: number): void => {
    const q = carried[e]!;
    const foot =
      (q === 0 ? (price.raceway * graph.multiplier[e]!) / sharers : 0) +
      price.conductor +
      (price.conduit * (conduitsFor(q + 1, graph.room[e]!, price) - conduitsFor(q, graph.room[e]!, price))) /
        Math.min(sharers, price.circuitsPerConduit);
    cost[e] = graph.length[e]! * foot * line[turning.lineOf[e]!]! * (e === shut ? GIVEN_UP : 1);
  };
  const weighAll = (sharers: number): void => {
    for (let e = 0; e < graph.edges; e++) weigh(e, sharers);
  };
  const carry = (way: readonly number[], more: 1 | -1): void => {
    for (const e of way) carried[e] = carried[e]! + more;
  };
  const isAhead = order.length > 1 && random() < AHEAD;
  if (isAhead) {
    for (const [i, k] of order.entries()) {
      weighAll(order.length - i);
      const way = turning.way(terminals[k]!, cost, turn);
      if (way === null) return null;
      next[k] = way;
      carry(way, 1);
    }
  }
  weighAll(1);
  for (const k of order) {
    const before = next[k]!;
    carry(before, -1);
    // Only where one was laid is the next one's foot another.
    for (const e of before) weigh(e, 1);
    const way = turning.way(terminals[k]!, cost, turn);
    if (way === null) return null;
    next[k] = way;
    carry(way, 1);
    for (const e of way) weigh(e, 1);
  }
  return next;
}

const shuffled = (places: readonly number[], random: () => number): readonly number[] =>
  places
    .map((k) => ({ k, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ k }) => k);
