import { MultiUndirectedGraph } from 'graphology';
import { kept } from '../kept/kept.ts';
import type { Network } from './network.ts';

export interface NodeAttributes {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface EdgeAttributes {
  /** Feet. */
  readonly length: number;
  /** Null across the gap of a joint. */
  readonly raceway: string | null;
}

export type RacewayGraph = MultiUndirectedGraph<NodeAttributes, EdgeAttributes>;

/**
 * The network as a graphology graph, for inspection and for other graph algorithms: a node for each node under its
 * number as a string, an edge for each edge. Two raceways along one line are two edges. Built once for a network;
 * whoever wants to change it works on a copy.
 */
export const graphOf = kept((network: Network): RacewayGraph => {
  const graph: RacewayGraph = new MultiUndirectedGraph<NodeAttributes, EdgeAttributes>();
  const { nodes, x, y, z, tail, head, twin, weight, leg, legs } = network;
  for (let n = 0; n < nodes; n++) graph.addNode(n, { x: x[n]!, y: y[n]!, z: z[n]! });
  for (let h = 0; h < head.length; h++) {
    if (twin[h]! < h) continue;
    const on = leg[h]!;
    graph.addEdge(tail[h], head[h], {
      length: weight[h]!,
      raceway: on < 0 ? null : legs.raceways[legs.rank[on]!]!,
    });
  }
  return graph;
});
