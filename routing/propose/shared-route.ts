import { arcSearch } from './shared/arc-paths.ts';
import { type EdgeRow, homeGraph } from './shared/home-graph.ts';
import { sharedBound } from './shared/shared-bound.ts';
import type { SharedPrice } from './shared/shared-cost.ts';
import { searchShared } from './shared/shared-search.ts';

export interface SharedRouteWish {
  /** Nodes are numbered 0 to `nodes` - 1. */
  readonly nodes: number;
  readonly root: number;
  /** One circuit ends at each entry. */
  readonly terminals: readonly number[];
  readonly edges: readonly EdgeRow[];
  readonly price: SharedPrice;
}

export interface SharedRoute {
  readonly cost: number;
  /** Proved: no set of routes costs less. */
  readonly bound: number;
  /** Nodes of each circuit's path, root first, in the order of `terminals`. */
  readonly paths: readonly (readonly number[])[];
  /** Edges of each, likewise. */
  readonly edges: readonly (readonly number[])[];
}

/** How long is searched for better routes and for a better bound. */
export interface Effort {
  readonly rounds: number;
  readonly steps: number;
  /** Asked before each round and step; no more are made once it says no. */
  readonly mayGoOn?: () => boolean;
}

const EFFORT: Effort = { rounds: 3000, steps: 3000 };

/**
 * Home runs that share raceways and conduits at the least cost: an edge of length L that carries q circuits costs
 * L x (raceway x multiplier + conductor x q + conduit x ceil(q / circuitsPerConduit)). The routes come from a local
 * search, the bound from a Lagrangian dual; the same input always gives the same answer.
 * @throws RangeError where a terminal cannot be reached or a number is out of its range
 */
export function sharedRoute(
  { nodes, root, terminals, edges, price }: SharedRouteWish,
  { rounds, steps, mayGoOn = () => true }: Effort = EFFORT,
): SharedRoute {
  const graph = homeGraph(nodes, edges);
  const reached = arcSearch(graph);
  reached.run(root, -1, new Float64Array(graph.head.length).fill(1));
  for (const terminal of terminals)
    if (!Number.isFinite(reached.distance[terminal]))
      throw new RangeError(`terminal ${terminal} cannot be reached from ${root}`);
  const found = searchShared(graph, root, terminals, price, rounds, mayGoOn);
  // One circuit alone goes the cheapest way there is.
  const bound =
    terminals.length === 1 ? found.cost : sharedBound(graph, root, terminals, price, found.cost, steps, mayGoOn);
  return {
    cost: found.cost,
    bound: Math.min(bound, found.cost),
    edges: found.paths,
    paths: found.paths.map((path) => {
      const way = [root];
      for (const e of path) {
        const [u, v] = edges[e] as EdgeRow;
        way.push(way.at(-1) === u ? v : u);
      }
      return way;
    }),
  };
}
