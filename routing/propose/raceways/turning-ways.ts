import { distance } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';
import type { HomeGraph } from '../shared/home-graph.ts';

/** Ways over a graph on which turns have a price too. */
export interface TurningWays {
  /** Of each edge the straight that it lies on: edges in line have the same. */
  readonly lineOf: Int32Array;
  readonly lines: number;
  /** How often a way turns. */
  readonly turns: (way: readonly number[]) => number;
  /**
   * Edges of the cheapest way from the root to a node, the root's first; null where there is none.
   * @param cost of each edge, not negative
   * @param turn what a turn costs
   */
  readonly way: (target: number, cost: Float64Array, turn: number) => number[] | null;
}

const numberer = (): ((key: string) => number) => {
  const known = new Map<string, number>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, known.size);
    return known.size - 1;
  };
};

const rounded = (value: number): number => Math.round(value * 1e3) / 1e3 + 0;

/** Looks for ways by Dijkstra's search over the arcs of a graph, so that what came before an arc tells whether it turns. */
export function turningWays(graph: HomeGraph, points: readonly Point3[], root: number): TurningWays {
  const { first, head, edge } = graph;
  const arcs = head.length;
  const tail = new Int32Array(arcs);
  for (let node = 0; node < graph.nodes; node++) for (let a = first[node]!; a < first[node + 1]!; a++) tail[a] = node;
  const headings = numberer();
  const straights = numberer();
  const heading = new Int32Array(arcs).fill(-1);
  const lineOf = new Int32Array(graph.edges);
  for (let a = 0; a < arcs; a++) {
    const [p, q] = [points[tail[a]!]!, points[head[a]!]!];
    const long = distance(p, q);
    if (long > 1e-6) {
      const way = p.map((value, k) => rounded((q[k]! - value) / long));
      heading[a] = headings(way.join(' '));
      const up = way.find((value) => value !== 0)! > 0;
      const along = p.reduce((sum, value, k) => sum + value * way[k]!, 0);
      const foot = p.map((value, k) => Math.round((value - along * way[k]!) * 10) / 10 + 0);
      lineOf[edge[a]!] = straights(`${(up ? way : way.map((value) => -value + 0)).join(' ')}|${foot.join(' ')}`);
    } else lineOf[edge[a]!] = straights(`tap ${edge[a]!}`);
  }
  const isTurn = (a: number, b: number): boolean => heading[a]! >= 0 && heading[b]! >= 0 && heading[a] !== heading[b];

  const far = new Float64Array(arcs);
  const before = new Int32Array(arcs);
  const queue = heap(4 * arcs + 16);

  const way = (target: number, cost: Float64Array, turn: number): number[] | null => {
    if (target === root) return [];
    far.fill(Number.POSITIVE_INFINITY);
    queue.clear();
    for (let a = first[root]!; a < first[root + 1]!; a++) {
      far[a] = cost[edge[a]!]!;
      before[a] = -1;
      queue.push(a, far[a]!);
    }
    for (let a = queue.pop(far); a >= 0; a = queue.pop(far)) {
      const node = head[a]!;
      if (node === target) {
        const found: number[] = [];
        for (let at = a; at >= 0; at = before[at]!) found.push(edge[at]!);
        return found.reverse();
      }
      for (let b = first[node]!; b < first[node + 1]!; b++) {
        if (edge[b] === edge[a]) continue;
        const to = far[a]! + cost[edge[b]!]! + (isTurn(a, b) ? turn : 0);
        if (to < far[b]! - 1e-12) {
          far[b] = to;
          before[b] = a;
          queue.push(b, to);
        }
      }
    }
    return null;
  };

  /** The arc by which an edge leaves a node. */
  const arcFrom = (node: number, e: number): number => {
    for (let a = first[node]!; a < first[node + 1]!; a++) if (edge[a] === e) return a;
    return -1;
  };
  const turns = (edges: readonly number[]): number => {
    let count = 0;
    let node = root;
    let last = -1;
    for (const e of edges) {
      const a = arcFrom(node, e);
      if (a < 0) return count;
      if (last >= 0 && isTurn(last, a)) count++;
      if (heading[a]! >= 0) last = a;
      node = head[a]!;
    }
    return count;
  };
  return { lineOf, lines: new Set(lineOf).size + arcs, turns, way };
}

/** A binary heap of numbers by keys, of which some may have been bettered since they were put in. */
function heap(room: number) {
  let items = new Int32Array(room);
  let keys = new Float64Array(room);
  let size = 0;
  const push = (item: number, key: number): void => {
    if (size === items.length) {
      const [more, moreKeys] = [new Int32Array(2 * size), new Float64Array(2 * size)];
      more.set(items);
      moreKeys.set(keys);
      [items, keys] = [more, moreKeys];
    }
    let i = size++;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (keys[parent]! <= key) break;
      keys[i] = keys[parent]!;
      items[i] = items[parent]!;
      i = parent;
    }
    keys[i] = key;
    items[i] = item;
  };
  const popped = (): void => {
    size--;
    const [key, item] = [keys[size]!, items[size]!];
    let i = 0;
    for (let child = 1; child < size; child = 2 * i + 1) {
      if (child + 1 < size && keys[child + 1]! < keys[child]!) child++;
      if (keys[child]! >= key) break;
      keys[i] = keys[child]!;
      items[i] = items[child]!;
      i = child;
    }
    keys[i] = key;
    items[i] = item;
  };
  /** The one with the least key that was not bettered since; -1 where none is left. */
  const pop = (best: Float64Array): number => {
    while (size > 0) {
      const [item, key] = [items[0]!, keys[0]!];
      popped();
      if (key <= best[item]!) return item;
    }
    return -1;
  };
  const clear = (): void => {
    size = 0;
  };
  return { push, pop, clear };
}
