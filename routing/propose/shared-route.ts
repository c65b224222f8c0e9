import type { SharedRoutes } from './shared/anneal.ts';
import { arcSearch } from './shared/arc-paths.ts';
import { type EdgeRow, type HomeGraph, homeGraph, otherEnd } from './shared/home-graph.ts';
import { sharedBound } from './shared/shared-bound.ts';
import type { SharedPrice } from './shared/shared-cost.ts';
import { searchShared } from './shared/shared-search.ts';
import { steadyOrder } from './shared/steady-order.ts';

export interface SharedRouteWish {
  /** Nodes are numbered 0 to `nodes` - 1. */
  readonly nodes: number;
  readonly root: number;
  /** One circuit ends at each entry. */
  readonly terminals: readonly number[];
  readonly edges: readonly EdgeRow[];
  readonly price: SharedPrice;
}

/** Routes of all circuits. */
export interface SharedAnswer {
  readonly cost: number;
  /** Nodes of each circuit's path, root first, in the order of `terminals`. */
  readonly paths: readonly (readonly number[])[];
  /** Edges of each, likewise. */
  readonly edges: readonly (readonly number[])[];
}

export interface SharedRoute extends SharedAnswer {
  /** Proved: no set of routes costs less. */
  readonly bound: number;
  /** The next best that were met, the cheapest first: no two lie on the same edges. */
  readonly others: readonly SharedAnswer[];
  /** What the search began with: the same however long it is. */
  readonly first: SharedAnswer;
}

/** Rounds and steps: how long is searched for better routes and for a better bound. */
export interface Effort {
  readonly rounds: number;
  readonly steps: number;
  /** So many answers at most, the best one among them; only that one unless said. */
  readonly keep?: number;
  /** Asked before each round and step; no more are made once it says no. */
  readonly mayGoOn?: () => boolean;
}

const EFFORT: Effort = { rounds: 20_000, steps: 1200 };

/**
 * Home runs that share raceways and conduits at the least cost: an edge of length L that carries q circuits costs
 * L x (raceway x multiplier + conductor x q + conduit x ceil(q / circuitsPerConduit)), conduits for those alone that find no
 * room in what lies there. The routes come from a local
 * search, the bound from a Lagrangian dual; the same input always gives the same answer, however it is numbered. With `keep` the next best
 * routes are given too (`others`), for who weighs them by more than these prices.
 * @throws RangeError where a terminal cannot be reached or a number is out of its range
 */
export function sharedRoute(
  { nodes, root, terminals, edges, price }: SharedRouteWish,
  { rounds, steps, keep = 1, mayGoOn = () => true }: Effort = EFFORT,
): SharedRoute {
  const graph = homeGraph(nodes, edges);
  const reached = arcSearch(graph);
  reached.run(root, -1, new Float64Array(graph.head.length).fill(1));
  for (const terminal of terminals)
    if (!Number.isFinite(reached.distance[terminal]))
      throw new RangeError(`terminal ${terminal} cannot be reached from ${root}`);
  const own = renumbered({ nodes, root, terminals, edges, price }, steadyOrder(graph, root, terminals));
  const ownGraph = homeGraph(nodes, own.edges);
  const found = searchShared(ownGraph, own.root, own.terminals, price, { rounds, keep, mayGoOn });
  const given = ({ cost, paths }: SharedRoutes): SharedAnswer => {
    const ways: number[][] = [];
    own.circuitAt.forEach((k, i) => {
      ways[k] = (paths[i] as readonly number[]).map((e) => own.edgeAt[e] as number);
    });
    return { cost, edges: ways, paths: ways.map((path) => nodesAlong(graph, root, path)) };
  };
  const [best, ...others] = found.best.map(given) as [SharedAnswer, ...SharedAnswer[]];
  // One circuit alone goes the cheapest way there is.
  const bound =
    terminals.length === 1
      ? best.cost
      : sharedBound(ownGraph, own.root, own.terminals, price, best.cost, steps, mayGoOn);
  return { ...best, bound: Math.min(bound, best.cost), others, first: given(found.first) };
}

/** The same wish with its nodes, edges and circuits in a steady order, so that what is found depends on no numbering. */
function renumbered({ root, terminals, edges }: SharedRouteWish, place: Int32Array) {
  const at = (node: number): number => place[node] as number;
  const rows = edges
    .map(([u, v, length, multiplier, room = 0], given) => ({
      given,
      row: [Math.min(at(u), at(v)), Math.max(at(u), at(v)), length, multiplier, room] as const,
    }))
    .sort(({ row: a }, { row: b }) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3] || a[4] - b[4]);
  const circuits = terminals
    .map((terminal, given) => ({ given, terminal: at(terminal) }))
    .sort((a, b) => a.terminal - b.terminal);
  return {
    root: at(root),
    edges: rows.map(({ row }) => row),
    edgeAt: rows.map(({ given }) => given),
    terminals: circuits.map(({ terminal }) => terminal),
    circuitAt: circuits.map(({ given }) => given),
  };
}

function nodesAlong(graph: HomeGraph, root: number, path: readonly number[]): number[] {
  const way = [root];
  for (const e of path) way.push(otherEnd(graph, e, way.at(-1) as number));
  return way;
}
