import { arcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import type { SharedPrice } from './shared-cost.ts';

/**
 * A proved lower bound on the cost of shared routes: the Lagrangian dual of the directed multi-commodity model. What an
 * arc costs once (raceway and a first conduit) is dealt out among the circuits, each then goes its shortest way, and the
 * sum can be no more than any plan costs; the shares are improved by subgradient steps (Held, Wolfe and Crowder 1974)
 * towards `target`, the cost of a known plan. Circuits of a best plan never use an edge in both directions (swapping
 * their ends would save it), so each direction has its own shares.
 */
export function sharedBound(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  target: number,
  steps: number,
): number {
  const groups = [...new Set(terminals)];
  const demand = groups.map((terminal) => terminals.filter((t) => t === terminal).length);
  const arcs = graph.head.length;
  const search = arcSearch(graph);
  let bestBound = 0;
  // The conduit term is at least one conduit, and at least q / circuitsPerConduit: any mix of the two is a bound.
  for (const mix of [0, 0.5, 1]) {
    const once = Float64Array.from(
      graph.edge,
      (e) =>
        (graph.length[e] as number) * (price.raceway * (graph.multiplier[e] as number) + price.conduit * (1 - mix)),
    );
    const each = Float64Array.from(
      graph.edge,
      (e) => (graph.length[e] as number) * (price.conductor + (price.conduit * mix) / price.circuitsPerConduit),
    );
    const shares = groups.map(() => Float64Array.from(once, (c) => c / groups.length));
    const cost = new Float64Array(arcs);
    const used = groups.map(() => new Uint8Array(arcs));
    let pace = 1.2;
    let stale = 0;
    let bestHere = 0;
    for (let step = 0; step < steps; step++) {
      let bound = 0;
      groups.forEach((terminal, k) => {
        const share = shares[k] as Float64Array;
        const q = demand[k] as number;
        for (let a = 0; a < arcs; a++) cost[a] = q * (each[a] as number) + (share[a] as number);
        bound += search.run(root, terminal, cost);
        const on = used[k] as Uint8Array;
        on.fill(0);
        for (let node = terminal; node !== root && node >= 0; node = search.from[node] as number)
          on[search.by[node] as number] = 1;
      });
      if (bound > bestHere + 1e-9) {
        bestHere = bound;
        stale = 0;
      } else if (++stale > 12) {
        pace /= 1.6;
        stale = 0;
        if (pace < 1e-4) break;
      }
      let norm = 0;
      for (let a = 0; a < arcs; a++) {
        let users = 0;
        for (const on of used) users += on[a] as number;
        if (users > 0) norm += users;
      }
      const size = (pace * Math.max(target - bound, target * 1e-6)) / Math.max(1, norm);
      for (let a = 0; a < arcs; a++) share(shares, used, a, size, once[a] as number);
    }
    bestBound = Math.max(bestBound, bestHere);
  }
  return bestBound;
}

/** One step of the shares of an arc towards its users, kept non-negative and summing to what it costs once. */
function share(
  shares: readonly Float64Array[],
  used: readonly Uint8Array[],
  arc: number,
  size: number,
  once: number,
): void {
  let users = 0;
  for (const on of used) users += on[arc] as number;
  if (users === 0) return;
  const moved = shares.map((each, k) => (each[arc] as number) + size * ((used[k] as Uint8Array)[arc] as number));
  const sum = moved.reduce((total, value) => total + value, 0);
  if (sum > once) project(moved, once);
  moved.forEach((value, k) => {
    (shares[k] as Float64Array)[arc] = value;
  });
}

/** Nearest point with non-negative entries that sum to `total` (Held, Wolfe and Crowder). In place. */
function project(values: number[], total: number): void {
  const sorted = [...values].sort((a, b) => b - a);
  let sum = 0;
  let cut = 0;
  sorted.forEach((value, i) => {
    sum += value;
    const level = (sum - total) / (i + 1);
    if (value > level) cut = level;
  });
  for (let i = 0; i < values.length; i++) values[i] = Math.max(0, (values[i] as number) - cut);
}
