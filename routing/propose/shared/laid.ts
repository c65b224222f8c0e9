import { type ArcSearch, wayBack } from './arc-paths.ts';
import { type HomeGraph, otherEnd } from './home-graph.ts';
import { edgeCost, type SharedPrice } from './shared-cost.ts';
import { steadyNumbers } from './steady-numbers.ts';

/** Circuits that are to be laid from a root to their terminals, and what is known of the graph beforehand. */
export interface LayingWish {
  readonly graph: HomeGraph;
  readonly root: number;
  readonly terminals: readonly number[];
  readonly price: SharedPrice;
  /** Takes costs by edge. */
  readonly search: ArcSearch;
  /** Shortest length from the root to each node. */
  readonly away: Float64Array;
}

/** Circuits as they lie, and what they cost: kept up edge by edge as circuits are lifted and laid. */
export interface Laid {
  /** Edges of each circuit's path, root first. */
  readonly paths: (readonly number[])[];
  readonly cost: () => number;
  /** A number of the edges that carry circuits, the same for the same edges. */
  readonly mark: () => number;
  readonly lift: (k: number) => void;
  readonly put: (k: number, path: readonly number[]) => void;
  /** The cheapest way from a node to the root for `together` circuits, given what lies; what is banned is taken only where there is no other. */
  readonly way: (from: number, together: number, banned: number) => number[];
}

/** Circuits laid along some paths, root first; none yet where there are none. */
export function laidAlong(wish: LayingWish, along: readonly (readonly number[])[] = []): Laid {
  const { graph, root, terminals, price, search, away } = wish;
  const carried = new Int32Array(graph.edges);
  const paths: (readonly number[])[] = terminals.map(() => []);
  /** What one circuit more would cost, by edge. */
  const more = Float64Array.from(graph.length, (_, e) => edgeCost(graph, price, e, 1));
  const block = new Float64Array(graph.edges);
  const marks = marksOf(graph);
  const ban = banOf(wish);
  const mostRoom = graph.room.reduce((most, room) => Math.max(most, room), 0);
  /** Each circuit's conductors, and the conduits that so many need whatever lies: less than any foot costs them. */
  const least = (together: number): number =>
    price.conductor * together +
    price.conduit * Math.floor(Math.max(0, together - mostRoom) / price.circuitsPerConduit);
  let cost = 0;
  let mark = 0;
  const carry = (e: number, by: 1 | -1): void => {
    const q = (carried[e] as number) + by;
    carried[e] = q;
    if (q === 0 || (q === 1 && by === 1)) mark ^= marks[e] as number;
    const here = edgeCost(graph, price, e, q);
    cost += by === 1 ? (more[e] as number) : here - edgeCost(graph, price, e, q + 1);
    more[e] = edgeCost(graph, price, e, q + 1) - here;
  };
  const put = (k: number, path: readonly number[]): void => {
    for (const e of path) carry(e, 1);
    paths[k] = path;
  };
  const lift = (k: number): void => {
    for (const e of paths[k] as readonly number[]) carry(e, -1);
    paths[k] = [];
  };
  const costs = (together: number): Float64Array => {
    if (together === 1) return more;
    for (let e = 0; e < graph.edges; e++) {
      const q = carried[e] as number;
      block[e] = edgeCost(graph, price, e, q + together) - edgeCost(graph, price, e, q);
    }
    return block;
  };
  const way = (from: number, together: number, banned: number): number[] => {
    const by = costs(together);
    const before = banned < 0 ? 0 : (by[banned] as number);
    if (banned >= 0) by[banned] = before + ban;
    search.run(from, root, by, away, least(together));
    if (banned >= 0) by[banned] = before;
    return wayBack(search, from, root).map((arc) => graph.edge[arc] as number);
  };
  for (const [k, path] of along.entries()) put(k, path);
  return { paths, cost: () => cost, mark: () => mark, lift, put, way };
}

const marked = new WeakMap<HomeGraph, Int32Array>();

/** A number of each edge, any two unlike. */
function marksOf(graph: HomeGraph): Int32Array {
  const before = marked.get(graph);
  if (before) return before;
  const random = steadyNumbers(97);
  const marks = Int32Array.from(graph.edge.subarray(0, graph.edges), () => random() * 2 ** 32);
  marked.set(graph, marks);
  return marks;
}

/** More than any route costs, yet not infinite. */
function banOf({ graph, terminals, price }: LayingWish): number {
  let all = 1;
  for (let e = 0; e < graph.edges; e++) all += edgeCost(graph, price, e, terminals.length);
  return 2 * all;
}

/** A path from the root without the rings in it: where it comes to a node again, what lies between is left out. */
export function withoutRings(graph: HomeGraph, root: number, path: readonly number[]): number[] {
  const seen = new Map<number, number>([[root, 0]]);
  let out: number[] = [];
  let node = root;
  for (const e of path) {
    node = otherEnd(graph, e, node);
    out.push(e);
    const at = seen.get(node);
    if (at === undefined) seen.set(node, out.length);
    else {
      out = out.slice(0, at);
      for (const [n, length] of seen) if (length > at) seen.delete(n);
    }
  }
  return out;
}
