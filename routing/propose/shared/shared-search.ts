import { type ArcSearch, arcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import { edgeCost, type SharedPrice, sharedCost } from './shared-cost.ts';

/** More than any route costs, yet not infinite. */
const BAN = 1e12;

export interface SharedRoutes {
  readonly cost: number;
  /** Edges of each terminal's path, from the root. */
  readonly paths: readonly (readonly number[])[];
}

/** Numbers in 0 .. 1 from a fixed start: the same problem always gets the same answer. */
function steadyNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * Good shared routes by local search: each circuit in turn takes the cheapest way given where the others lie, until none
 * moves; then some circuits near one another are taken out and put back, `rounds` times, and what is cheaper is kept.
 */
export function searchShared(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  rounds: number,
  mayGoOn: () => boolean,
): SharedRoutes {
  const search = arcSearch(graph);
  const random = steadyNumbers(20_251);
  let best = descend(start(graph, root, terminals, price, search, 'far'), graph, root, terminals, price, search);
  for (const order of ['near', 'straight'] as const) {
    const other = descend(start(graph, root, terminals, price, search, order), graph, root, terminals, price, search);
    if (other.cost < best.cost) best = other;
  }
  let current = best;
  for (let round = 0; round < rounds && terminals.length > 1 && mayGoOn(); round++) {
    const laid = load(graph, price, current.paths);
    const { out, banned } = ruin(current.paths, random);
    for (const k of out) lift(laid, k);
    for (const k of shuffled(out, random)) lay(laid, k, graph, root, terminals, search, banned);
    const next = descend(
      { cost: sharedCost(graph, price, laid.carried), paths: laid.paths },
      graph,
      root,
      terminals,
      price,
      search,
    );
    // A little worse is taken as a place to go on from, so that the search can leave a hollow.
    if (next.cost <= current.cost * (1 + 0.02 * random() ** 3)) current = next;
    if (next.cost < best.cost - 1e-9) best = next;
    if (round % 60 === 59) current = best;
  }
  return best;
}

/**
 * Circuits to take out: those near one of them (that share the most edges), any, or all that use one edge, which is
 * then banned so that a trunk can move as a whole.
 */
function ruin(paths: readonly (readonly number[])[], random: () => number): { out: readonly number[]; banned: number } {
  const all = paths.map((_, k) => k);
  const middle = Math.floor(random() * paths.length);
  const kind = random();
  const some = 2 + Math.floor(random() * Math.max(1, paths.length * 0.6));
  if (kind < 0.5) {
    const path = paths[middle] as readonly number[];
    const edge = path[Math.floor(random() * path.length)] ?? -1;
    return { out: all.filter((k) => paths[k]?.includes(edge)), banned: edge };
  }
  if (kind < 0.75) return { out: shuffled(all, random).slice(0, some), banned: -1 };
  const near = new Map(all.map((k) => [k, common(paths[middle], paths[k]) + random() * 3]));
  return { out: [...all].sort((a, b) => (near.get(b) as number) - (near.get(a) as number)).slice(0, some), banned: -1 };
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  return list
    .map((item) => ({ item, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);
}

interface Laid {
  readonly carried: Int32Array;
  readonly paths: (readonly number[])[];
  /** What one circuit more would cost, by arc: kept up as circuits are laid and lifted. */
  readonly more: Float64Array;
  /** Changes how many circuits an edge carries. */
  readonly carry: (edge: number, by: 1 | -1) => void;
}

function load(graph: HomeGraph, price: SharedPrice, paths: readonly (readonly number[])[]): Laid {
  const carried = new Int32Array(graph.edges);
  for (const path of paths) for (const e of path) carried[e] = (carried[e] as number) + 1;
  const extra = (e: number): number => {
    const q = carried[e] as number;
    return edgeCost(graph, price, e, q + 1) - edgeCost(graph, price, e, q);
  };
  const more = Float64Array.from(graph.edge, extra);
  const arcs = arcsOf(graph);
  const carry = (e: number, by: 1 | -1): void => {
    carried[e] = (carried[e] as number) + by;
    const cost = extra(e);
    more[arcs[2 * e] as number] = cost;
    more[arcs[2 * e + 1] as number] = cost;
  };
  return { carried, paths: [...paths], more, carry };
}

const known = new WeakMap<HomeGraph, Int32Array>();

/** The two arcs of each edge. */
function arcsOf(graph: HomeGraph): Int32Array {
  const before = known.get(graph);
  if (before) return before;
  const arcs = new Int32Array(2 * graph.edges).fill(-1);
  graph.edge.forEach((e, a) => {
    arcs[arcs[2 * e] === -1 ? 2 * e : 2 * e + 1] = a;
  });
  known.set(graph, arcs);
  return arcs;
}

function lift(laid: Laid, k: number): void {
  for (const e of laid.paths[k] ?? []) laid.carry(e, -1);
  laid.paths[k] = [];
}

/** Lays circuit k the cheapest way given the circuits that lie already. */
function lay(
  laid: Laid,
  k: number,
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  search: ArcSearch,
  banned = -1,
): void {
  // Banned, not removed: where it is the only way, it is still taken.
  const ban = (by: number): void => {
    if (banned < 0) return;
    for (const a of arcsOf(graph).subarray(2 * banned, 2 * banned + 2)) laid.more[a] = by;
  };
  const before = banned < 0 ? 0 : (laid.more[arcsOf(graph)[2 * banned] as number] as number);
  ban(before + BAN);
  const path = pathTo(search, graph, root, terminals[k] as number, laid.more);
  ban(before);
  laid.paths[k] = path;
  for (const e of path) laid.carry(e, 1);
}

function pathTo(search: ArcSearch, graph: HomeGraph, root: number, target: number, cost: Float64Array): number[] {
  search.run(root, target, cost);
  const path: number[] = [];
  for (let node = target; node !== root; node = search.from[node] as number) {
    const arc = search.by[node] as number;
    if (arc < 0) throw new RangeError(`no way from node ${root} to node ${target}`);
    path.push(graph.edge[arc] as number);
  }
  return path.reverse();
}

function start(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  search: ArcSearch,
  order: 'far' | 'near' | 'straight',
): SharedRoutes {
  const single = Float64Array.from(graph.edge, (e) => edgeCost(graph, price, e, 1));
  search.run(root, -1, single);
  const far = terminals.map((terminal) => search.distance[terminal] as number);
  const turn = terminals
    .map((_, k) => k)
    .sort((a, b) => (order === 'near' ? 1 : -1) * ((far[a] as number) - (far[b] as number)));
  const laid = load(
    graph,
    price,
    terminals.map((terminal) => (order === 'straight' ? pathTo(search, graph, root, terminal, single) : [])),
  );
  if (order !== 'straight') for (const k of turn) lay(laid, k, graph, root, terminals, search);
  return { cost: sharedCost(graph, price, laid.carried), paths: laid.paths };
}

function descend(
  from: SharedRoutes,
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  search: ArcSearch,
): SharedRoutes {
  const laid = load(graph, price, from.paths);
  let cost = from.cost;
  for (let better = true; better; ) {
    better = false;
    for (let k = 0; k < terminals.length; k++) {
      const before = laid.paths[k] as readonly number[];
      lift(laid, k);
      lay(laid, k, graph, root, terminals, search);
      const now = sharedCost(graph, price, laid.carried);
      if (now < cost - 1e-9) {
        cost = now;
        better = true;
      } else if (now > cost) {
        lift(laid, k);
        laid.paths[k] = before;
        for (const e of before) laid.carry(e, 1);
      }
    }
  }
  return { cost, paths: laid.paths };
}

function common(a: readonly number[] | undefined, b: readonly number[] | undefined): number {
  const edges = new Set(a);
  return (b ?? []).reduce((sum, e) => sum + (edges.has(e) ? 1 : 0), 0);
}
