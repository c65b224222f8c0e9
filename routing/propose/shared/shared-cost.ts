import type { HomeGraph } from './home-graph.ts';

/** Weights per foot: raceway (times the edge's multiplier), each circuit's conductors, each conduit and how many circuits it holds. */
export interface SharedPrice {
  readonly raceway: number;
  readonly conductor: number;
  readonly conduit: number;
  readonly circuitsPerConduit: number;
}

/** New conduits for so many circuits, once those that lie there have taken what they have room for. */
export const conduitsFor = (q: number, room: number, { circuitsPerConduit }: SharedPrice): number =>
  Math.ceil(Math.max(0, q - room) / circuitsPerConduit);

/** Cost of an edge that carries q circuits; nothing where it carries none. */
export function edgeCost(graph: HomeGraph, price: SharedPrice, edge: number, q: number): number {
  if (q === 0) return 0;
  const perFoot =
    price.raceway * (graph.multiplier[edge] as number) +
    price.conductor * q +
    price.conduit * conduitsFor(q, graph.room[edge] as number, price);
  return (graph.length[edge] as number) * perFoot;
}
