import { arcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import type { SharedPrice } from './shared-cost.ts';

/**
 * A proved lower bound on the cost of shared routes: the Lagrangian dual of the directed multi-commodity model. What an
 * arc costs once (raceway and a first conduit) is dealt out among the circuits, each then goes its shortest way, and the
 * sum can be no more than any plan costs; the shares are improved by subgradient steps (Held, Wolfe and Crowder 1974)
 * towards `target`, the cost of a known plan. Circuits of a best plan never use an edge in both directions (swapping
 * their ends would save it), so each direction has its own shares. The conduits of an arc are at least one, and at least
 * q / circuitsPerConduit: how much of a conduit is charged the second way is one more share of each arc.
 */
export function sharedBound(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  target: number,
  steps: number,
  mayGoOn: () => boolean,
): number {
  const groups = [...new Set(terminals)];
  const demand = groups.map((terminal) => terminals.filter((t) => t === terminal).length);
  const arcs = graph.head.length;
  const search = arcSearch(graph);
  const conduit = Float64Array.from(graph.edge, (e) => (graph.length[e] as number) * price.conduit);
  const once = Float64Array.from(
    graph.edge,
    (e, a) => (graph.length[e] as number) * price.raceway * (graph.multiplier[e] as number) + (conduit[a] as number),
  );
  const each = Float64Array.from(graph.edge, (e) => (graph.length[e] as number) * price.conductor);
  const perCircuit = new Float64Array(arcs);
  const shares = groups.map(() => Float64Array.from(once, (c) => c / groups.length));
  const cost = new Float64Array(arcs);
  const used = groups.map(() => new Uint8Array(arcs));
  const values = new Float64Array(groups.length + 1);
  let pace = 1.9;
  let stale = 0;
  let best = 0;
  for (let step = 0; step < steps && best < target - 1e-9 && pace > 1e-4 && mayGoOn(); step++) {
    let bound = 0;
    groups.forEach((terminal, k) => {
      const share = shares[k] as Float64Array;
      const q = demand[k] as number;
      for (let a = 0; a < arcs; a++) {
        const flow = (each[a] as number) + (perCircuit[a] as number) / price.circuitsPerConduit;
        cost[a] = q * flow + (share[a] as number);
      }
      bound += search.run(root, terminal, cost);
      const on = used[k] as Uint8Array;
      on.fill(0);
      for (let node = terminal; node !== root; node = search.from[node] as number) on[search.by[node] as number] = 1;
    });
    if (bound > best * (1 + 1e-7)) stale = 0;
    else if (++stale > 40) {
      pace /= 1.6;
      stale = 0;
    }
    best = Math.max(best, bound);

    let norm = 0;
    for (let a = 0; a < arcs; a++) {
      let flow = 0;
      used.forEach((on, k) => {
        norm += on[a] as number;
        flow += (on[a] as number) * (demand[k] as number);
      });
      norm += (flow / price.circuitsPerConduit) ** 2;
    }
    const size = (pace * (target - bound)) / Math.max(1, norm);
    for (let a = 0; a < arcs; a++) {
      let flow = 0;
      let sum = 0;
      used.forEach((on, k) => {
        flow += (on[a] as number) * (demand[k] as number);
        values[k] = ((shares[k] as Float64Array)[a] as number) + size * (on[a] as number);
        sum += values[k] as number;
      });
      if (flow === 0) continue;
      values[groups.length] = (perCircuit[a] as number) + (size * flow) / price.circuitsPerConduit;
      sum += values[groups.length] as number;
      if (sum > (once[a] as number)) project(values, values.length, once[a] as number);
      if ((values[groups.length] as number) > (conduit[a] as number)) {
        values[groups.length] = conduit[a] as number;
        project(values, groups.length, (once[a] as number) - (conduit[a] as number));
      }
      perCircuit[a] = values[groups.length] as number;
      shares.forEach((share, k) => {
        share[a] = values[k] as number;
      });
    }
  }
  return best;
}

/** Nearest point with non-negative entries that sum to at most `total`; the first `count` values, in place. */
function project(values: Float64Array, count: number, total: number): void {
  let all = 0;
  for (let i = 0; i < count; i++) all += Math.max(0, values[i] as number);
  if (all <= total) return;
  const sorted = values.slice(0, count).sort().reverse();
  let sum = 0;
  let cut = 0;
  sorted.forEach((value, i) => {
    sum += value;
    const level = (sum - total) / (i + 1);
    if (value > level) cut = level;
  });
  for (let i = 0; i < count; i++) values[i] = Math.max(0, (values[i] as number) - cut);
}
