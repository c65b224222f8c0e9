import type { ArcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import { edgeCost, type SharedPrice } from './shared-cost.ts';

/** More than any route costs, yet not infinite. */
const BAN = 1e12;

/** Circuits as they lie, and what they cost: kept up edge by edge as circuits are lifted and laid. */
export interface Laid {
  /** Edges of each circuit's path, root first. */
  readonly paths: (readonly number[])[];
  readonly cost: () => number;
  readonly lift: (k: number) => void;
  readonly put: (k: number, path: readonly number[]) => void;
  /** The cheapest way from a node to the root for `together` circuits, given what lies; what is banned is taken only where there is no other. */
  readonly way: (from: number, together: number, banned: number) => number[];
}

/**
 * No circuits laid yet, on `graph` from `root`. `search` takes costs by edge; `away` is the shortest length from the root
 * to each node.
 */
export function emptyLaid(
  graph: HomeGraph,
  root: number,
  circuits: number,
  price: SharedPrice,
  search: ArcSearch,
  away: Float64Array,
): Laid {
  const carried = new Int32Array(graph.edges);
  const paths: (readonly number[])[] = Array.from({ length: circuits }, () => []);
  /** What one circuit more would cost, by edge. */
  const more = Float64Array.from(graph.length, (_, e) => edgeCost(graph, price, e, 1));
  const block = new Float64Array(graph.edges);
  /** Each circuit's conductors, and the conduits that so many need whatever lies: less than any foot costs them. */
  const least = (together: number): number =>
    price.conductor * together + price.conduit * Math.floor(together / price.circuitsPerConduit);
  let cost = 0;
  const carry = (e: number, by: 1 | -1): void => {
    const q = (carried[e] as number) + by;
    carried[e] = q;
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
    if (banned >= 0) by[banned] = before + BAN;
    search.run(from, root, by, away, least(together));
    if (banned >= 0) by[banned] = before;
    const path: number[] = [];
    for (let node = root; node !== from; node = search.from[node] as number) {
      const arc = search.by[node] as number;
      if (arc < 0) throw new RangeError(`no way from node ${root} to node ${from}`);
      path.push(graph.edge[arc] as number);
    }
    return path;
  };
  return { paths, cost: () => cost, lift, put, way };
}
