import type { HomeGraph } from './home-graph.ts';

/** Weights per foot: raceway (times the edge's multiplier), each circuit's conductors, each conduit and how many circuits it holds. */
export interface SharedPrice {
  readonly raceway: number;
  readonly conductor: number;
  readonly conduit: number;
  readonly circuitsPerConduit: number;
}

/** Cost of an edge that carries q circuits; nothing where it carries none. */
export function edgeCost(graph: HomeGraph, price: SharedPrice, edge: number, q: number): number {
  if (q === 0) return 0;
  const perFoot =
    price.raceway * (graph.multiplier[edge] as number) +
    price.conductor * q +
    price.conduit * Math.ceil(q / price.circuitsPerConduit);
  return (graph.length[edge] as number) * perFoot;
}

/** Cost of all edges with the circuits they carry. */
export function sharedCost(graph: HomeGraph, price: SharedPrice, carried: Int32Array): number {
  let sum = 0;
  for (let e = 0; e < graph.edges; e++) sum += edgeCost(graph, price, e, carried[e] as number);
  return sum;
}
