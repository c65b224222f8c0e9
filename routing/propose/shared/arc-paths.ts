import type { HomeGraph } from './home-graph.ts';

/** Work space of one search after another over the same graph. */
export interface ArcSearch {
  readonly distance: Float64Array;
  /** Arc by which each node was reached; -1 at the root. */
  readonly by: Int32Array;
  /** Node from which it was reached. */
  readonly from: Int32Array;
  /**
   * From a node to a target (-1: to all), by costs that are not negative. Where `away` is given, what is left from a node
   * to the target costs at least `away` of it times `perFoot`, which spares looking the other way.
   */
  readonly run: (from: number, target: number, cost: Float64Array, away?: Float64Array, perFoot?: number) => number;
}

/**
 * Dijkstra's search with a binary heap, towards its target where estimates are given (Hart, Nilsson and Raphael 1968).
 * Costs are by arc, or by edge. `run` gives the distance of the target, infinite where it is not reached, and stops
 * there (or settles all nodes for target -1).
 */
export function arcSearch(graph: HomeGraph, costs: 'by arc' | 'by edge' = 'by arc'): ArcSearch {
  const { nodes, first, head } = graph;
  const place = costs === 'by edge' ? graph.edge : Int32Array.from(head, (_, a) => a);
  const distance = new Float64Array(nodes);
  const by = new Int32Array(nodes);
  const from = new Int32Array(nodes);
  const nowhere = new Float64Array(nodes);
  const heapNode = new Int32Array(head.length + nodes + 1);
  const heapKey = new Float64Array(head.length + nodes + 1);

  const run = (root: number, target: number, cost: Float64Array, away: Float64Array = nowhere, perFoot = 0): number => {
    distance.fill(Number.POSITIVE_INFINITY);
    by.fill(-1);
    from.fill(-1);
    let size = 0;
    const push = (node: number, key: number): void => {
      let i = size++;
      while (i > 0) {
        const parent = (i - 1) >> 1;
        if ((heapKey[parent] as number) <= key) break;
        heapKey[i] = heapKey[parent] as number;
        heapNode[i] = heapNode[parent] as number;
        i = parent;
      }
      heapKey[i] = key;
      heapNode[i] = node;
    };
    distance[root] = 0;
    push(root, (away[root] as number) * perFoot);
    while (size > 0) {
      const node = heapNode[0] as number;
      const key = heapKey[0] as number;
      size--;
      if (size > 0) {
        const lastKey = heapKey[size] as number;
        const lastNode = heapNode[size] as number;
        let i = 0;
        for (let child = 1; child < size; child = 2 * i + 1) {
          if (child + 1 < size && (heapKey[child + 1] as number) < (heapKey[child] as number)) child++;
          if ((heapKey[child] as number) >= lastKey) break;
          heapKey[i] = heapKey[child] as number;
          heapNode[i] = heapNode[child] as number;
          i = child;
        }
        heapKey[i] = lastKey;
        heapNode[i] = lastNode;
      }
      const here = distance[node] as number;
      if (key > here + (away[node] as number) * perFoot) continue;
      if (node === target) return here;
      for (let a = first[node] as number; a < (first[node + 1] as number); a++) {
        const to = head[a] as number;
        const far = here + (cost[place[a] as number] as number);
        if (far < (distance[to] as number)) {
          distance[to] = far;
          by[to] = a;
          from[to] = node;
          push(to, far + (away[to] as number) * perFoot);
        }
      }
    }
    return target < 0 ? 0 : (distance[target] as number);
  };
  return { distance, by, from, run };
}

/**
 * The arcs of the way that a search found from `from`, the last one first.
 * @throws RangeError where it found none
 */
export function wayBack({ by, from }: ArcSearch, start: number, end: number): number[] {
  const arcs: number[] = [];
  for (let node = end; node !== start; node = from[node] as number) {
    const arc = by[node] as number;
    if (arc < 0) throw new RangeError(`no way from node ${start} to node ${end}`);
    arcs.push(arc);
  }
  return arcs;
}
