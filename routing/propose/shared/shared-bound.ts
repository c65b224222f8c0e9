import { arcSearch, wayBack } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import { nearestShares } from './nearest-shares.ts';
import type { SharedPrice } from './shared-cost.ts';

/** Of the direction of each step, so much is of this step's paths; the rest of those before. */
const FRESH = 0.2;

/** How far a step goes at first; after so many steps without a better bound, less by a factor. */
const PACE = 1.9;
const PATIENCE = 10;
const FALL = 1.3;

/**
 * A proved lower bound on the cost of shared routes: the Lagrangian dual of the directed multi-commodity model. What an
 * arc costs once (raceway and a first conduit) is dealt out among the circuits, each then goes its shortest way, and the
 * sum can be no more than any plan costs; the shares are improved by deflected subgradient steps (Held, Wolfe and
 * Crowder 1974; Camerini, Fratta and Maffioli 1975) towards `target`, the cost of a known plan. Circuits of a best plan
 * never use an edge in both directions (swapping their ends would save it), so each direction has its own shares. The conduits of an arc are at least one, and at least
 * q / circuitsPerConduit: how much of a conduit is charged the second way is one more share of each arc.
 * @param conduitTimes how many times its price a conduit costs on each edge; once unless it is given
 */
export function sharedBound(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  target: number,
  steps: number,
  mayGoOn: () => boolean,
  conduitTimes?: readonly number[],
): number {
  const groups = [...new Set(terminals)];
  const count = groups.length;
  const demand = groups.map((terminal) => terminals.filter((t) => t === terminal).length);
  const arcs = graph.head.length;
  const search = arcSearch(graph);
  // Where conduits lie that have room, what more of them cost is left out: the bound is no higher for it.
  const conduit = Float64Array.from(graph.edge, (e) =>
    (graph.room[e] as number) > 0
      ? 0
      : (graph.length[e] as number) * price.conduit * (conduitTimes ? (conduitTimes[e] as number) : 1),
  );
  const once = Float64Array.from(
    graph.edge,
    (e, a) => (graph.length[e] as number) * price.raceway * (graph.multiplier[e] as number) + (conduit[a] as number),
  );
  const each = Float64Array.from(graph.edge, (e) => (graph.length[e] as number) * price.conductor);
  /** By group (the last row: what is charged by the circuit) and arc. */
  const rows = count + 1;
  const shares = new Float64Array(rows * arcs);
  for (let k = 0; k < count; k++) for (let a = 0; a < arcs; a++) shares[k * arcs + a] = (once[a] as number) / count;
  const direction = new Float64Array(rows * arcs);
  const cost = new Float64Array(arcs);
  const values = new Float64Array(rows);
  const flow = new Float64Array(arcs);
  const live = new Uint8Array(arcs);
  let pace = PACE;
  let stale = 0;
  let best = 0;
  for (let step = 0; step < steps && best < target * (1 - 1e-12) && pace > 1e-4 && mayGoOn(); step++) {
    let bound = 0;
    const fresh = step === 0 ? 1 : FRESH;
    for (let i = 0; i < direction.length; i++) direction[i] = (direction[i] as number) * (1 - fresh);
    flow.fill(0);
    for (let k = 0; k < count; k++) {
      const q = demand[k] as number;
      const row = k * arcs;
      for (let a = 0; a < arcs; a++)
        cost[a] =
          q * ((each[a] as number) + (shares[count * arcs + a] as number) / price.circuitsPerConduit) +
          (shares[row + a] as number);
      const terminal = groups[k] as number;
      bound += search.run(root, terminal, cost);
      for (const a of wayBack(search, root, terminal)) {
        direction[row + a] = (direction[row + a] as number) + fresh;
        flow[a] = (flow[a] as number) + q;
        live[a] = 1;
      }
    }
    for (let a = 0; a < arcs; a++) {
      const i = count * arcs + a;
      direction[i] = (direction[i] as number) + (fresh * (flow[a] as number)) / price.circuitsPerConduit;
    }
    if (bound > best * (1 + 1e-6)) stale = 0;
    else if (++stale > PATIENCE) {
      pace /= FALL;
      stale = 0;
    }
    best = Math.max(best, bound);

    let norm = 0;
    for (let i = 0; i < direction.length; i++) norm += (direction[i] as number) ** 2;
    const size = (pace * (target - bound)) / Math.max(1e-9, norm);
    for (let a = 0; a < arcs; a++) {
      if (live[a] === 0) continue;
      let sum = 0;
      for (let k = 0; k <= count; k++) {
        const i = k * arcs + a;
        const value = (shares[i] as number) + size * (direction[i] as number);
        values[k] = value;
        sum += value;
      }
      if (sum > (once[a] as number)) nearestShares(values, rows, once[a] as number);
      if ((values[count] as number) > (conduit[a] as number)) {
        values[count] = conduit[a] as number;
        nearestShares(values, count, (once[a] as number) - (conduit[a] as number));
      }
      for (let k = 0; k <= count; k++) shares[k * arcs + a] = values[k] as number;
    }
  }
  return best;
}
