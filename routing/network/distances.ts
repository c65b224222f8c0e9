import type { Network } from './network.ts';

/** Where a search enters the network: a node, and how far the way to it already is. */
export interface Seed {
  readonly node: number;
  readonly distance: number;
}

/** Shortest distances from some seeds to every node of one component. Nodes are counted from the component's first. */
export interface Distances {
  /** First node of the component, and its first half-edge. */
  readonly base: number;
  readonly baseHalf: number;
  readonly distance: Float64Array;
  /** Nodes in the order in which they were settled, nearest first. */
  readonly order: Int32Array;
}

/**
 * Dijkstra's algorithm over one component, once for all its nodes. The heap is four-way, holds each node once and
 * keeps keys beside nodes; this is the one loop whose speed decides how fast a lot is planned.
 */
export function distancesFrom(network: Network, component: number, seeds: readonly Seed[]): Distances {
  const base = network.firstNode[component]!;
  const end = network.firstNode[component + 1]!;
  const count = end - base;
  const { first, head, weight } = network;
  const distance = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const order = new Int32Array(count);
  const heap = new Int32Array(count + 1);
  const keys = new Float64Array(count + 1);
  /** Place in the heap, counted from 1; 0 is not in it. */
  const place = new Int32Array(count);
  let size = 0;

  const lift = (node: number, key: number, from: number): void => {
    let at = from;
    while (at > 0) {
      const up = (at - 1) >> 2;
      if (keys[up]! <= key) break;
      keys[at] = keys[up]!;
      const moved = heap[up]!;
      heap[at] = moved;
      place[moved] = at + 1;
      at = up;
    }
    keys[at] = key;
    heap[at] = node;
    place[node] = at + 1;
  };

  const sink = (node: number, key: number): void => {
    let at = 0;
    for (let child = 1; child < size; child = (at << 2) + 1) {
      let least = child;
      const stop = Math.min(child + 4, size);
      for (let c = child + 1; c < stop; c++) if (keys[c]! < keys[least]!) least = c;
      if (keys[least]! >= key) break;
      keys[at] = keys[least]!;
      const raised = heap[least]!;
      heap[at] = raised;
      place[raised] = at + 1;
      at = least;
    }
    keys[at] = key;
    heap[at] = node;
    place[node] = at + 1;
  };

  for (const seed of seeds) {
    const node = seed.node - base;
    if (!(node >= 0 && node < count)) throw new RangeError(`seed node ${seed.node} is not in component ${component}`);
    if (seed.distance >= distance[node]!) continue;
    distance[node] = seed.distance;
    lift(node, seed.distance, place[node]! > 0 ? place[node]! - 1 : size++);
  }
  let settled = 0;
  while (size > 0) {
    const node = heap[0]!;
    const at = keys[0]!;
    order[settled++] = node;
    // The top is left in place, as a sentinel no key is under, until a node that is new takes its room.
    let open = true;
    for (let h = first[node + base]!, stop = first[node + base + 1]!; h < stop; h++) {
      const to = head[h]! - base;
      const d = at + weight[h]!;
      if (d >= distance[to]!) continue;
      distance[to] = d;
      if (place[to]! > 0) lift(to, d, place[to]! - 1);
      else if (open) {
        open = false;
        sink(to, d);
      } else lift(to, d, size++);
    }
    if (open && --size > 0) sink(heap[size]!, keys[size]!);
  }
  return { base, baseHalf: first[base]!, distance, order: order.subarray(0, settled) };
}
