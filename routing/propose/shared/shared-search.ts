import { type ArcSearch, arcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';
import { emptyLaid, type Laid } from './laid.ts';
import { ruin, shuffled } from './ruin.ts';
import type { SharedPrice } from './shared-cost.ts';

export interface SharedRoutes {
  readonly cost: number;
  /** Edges of each terminal's path, from the root. */
  readonly paths: readonly (readonly number[])[];
}

/** Of so many rounds, one moves a trunk as a block. */
const BLOCK_EVERY = 8;

/** Worse by so much of what a circuit costs is taken at the start; at the end less by e to the power of the other. */
const WARM = 0.15;
const COOLING = 4;

/** Of all rounds, such a part lays the first circuits where it would be cheapest for all that follow. */
const AHEAD = 0.4;

/** Chains, each from its own start and seed. */
const CHAINS = 5;

/** Rounds are short: whether to go on is asked before one of so many. */
const ASKED_EVERY = 32;

/** Of each circuit, so many neighbors are known. */
const NEIGHBORS = 40;

/** Nearly -ln(u), from roots alone: the same in every engine to the last digit. */
const chanceOf = (u: number): number => 4 * (1 / Math.sqrt(Math.sqrt(Math.max(1e-12, u))) - 1);

/** Numbers in 0 .. 1 from a fixed start: the same problem always gets the same answer. */
function steadyNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * Good shared routes by annealed ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck 2000): circuits near
 * one another are taken out and each put back the cheapest way given what lies, or a trunk is laid anew for all that
 * share it; what is cheaper is kept, what is a little dearer at first too. `rounds` are shared by several chains, each
 * from another start and seed; the best of all ends with a descent, in which each circuit is laid anew until none moves.
 */
export function searchShared(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  rounds: number,
  mayGoOn: () => boolean,
): SharedRoutes {
  const search = arcSearch(graph, 'by edge');
  search.run(root, -1, graph.length);
  const away = search.distance.slice();
  const problem: Problem = { graph, root, terminals, price, search, away };
  const starts = (['far', 'near', 'straight', 'any'] as const)
    .map((order) => descend(problem, start(problem, order)))
    .sort((a, b) => a.cost - b.cost);
  let best = starts[0] as SharedRoutes;
  if (terminals.length < 2 || rounds < 1) return best;
  const neighbors = neighborsOf(problem);
  const each = Math.ceil(rounds / CHAINS);
  for (let chain = 0; chain < CHAINS && mayGoOn(); chain++) {
    const from = starts[Math.min(chain, starts.length - 1)] as SharedRoutes;
    const found = descend(
      problem,
      anneal(problem, from, neighbors, each, steadyNumbers(20_251 + 7_919 * chain), mayGoOn),
    );
    if (found.cost < best.cost - 1e-9) best = found;
  }
  return best;
}

interface Problem {
  readonly graph: HomeGraph;
  readonly root: number;
  readonly terminals: readonly number[];
  readonly price: SharedPrice;
  readonly search: ArcSearch;
  readonly away: Float64Array;
}

function laidFrom({ graph, root, terminals, price, search, away }: Problem, paths: SharedRoutes['paths']): Laid {
  const laid = emptyLaid(graph, root, terminals.length, price, search, away);
  for (const [k, path] of paths.entries()) laid.put(k, path);
  return laid;
}

function anneal(
  problem: Problem,
  from: SharedRoutes,
  neighbors: readonly (readonly number[])[],
  rounds: number,
  random: () => number,
  mayGoOn: () => boolean,
): SharedRoutes {
  const { terminals } = problem;
  const laid = laidFrom(problem, from.paths);
  const one = from.cost / terminals.length;
  let best = from;
  let now = laid.cost();
  let heat = one * WARM;
  const cooler = 1 - COOLING / rounds;
  for (let round = 0; round < rounds && (round % ASKED_EVERY > 0 || mayGoOn()); round++) {
    heat *= cooler;
    const { out, banned } = ruin(laid.paths, neighbors, random);
    const before = out.map((k) => laid.paths[k] as readonly number[]);
    if (round % BLOCK_EVERY === 0) moveBlock(problem, laid, out, random);
    else {
      for (const k of out) laid.lift(k);
      // Now and then the first ones go where it would be cheapest for all that follow: so new trunks come to be.
      const ahead = random() < AHEAD;
      for (const [i, k] of out.entries())
        laid.put(k, laid.way(terminals[k] as number, ahead ? out.length - i : 1, banned));
      if (ahead)
        for (const k of out) {
          laid.lift(k);
          laid.put(k, laid.way(terminals[k] as number, 1, banned));
        }
    }
    const then = laid.cost();
    if (then < now + heat * chanceOf(random())) {
      now = then;
      if (now < best.cost - 1e-9) best = { cost: now, paths: [...laid.paths] };
    } else {
      for (const k of out) laid.lift(k);
      for (const [i, k] of out.entries()) laid.put(k, before[i] as readonly number[]);
    }
  }
  return best;
}

/** Lays the shared start of some circuits anew, as one: from the root to the last node that all of them pass. */
function moveBlock({ graph, root }: Problem, laid: Laid, circuits: readonly number[], random: () => number): void {
  const first = laid.paths[circuits[0] as number] as readonly number[];
  let common = first.length;
  for (const k of circuits) {
    const path = laid.paths[k] as readonly number[];
    let same = 0;
    while (same < common && path[same] === first[same]) same++;
    common = same;
  }
  if (common === 0) return;
  let node = root;
  for (const e of first.slice(0, common)) node = otherEnd(graph, e, node);
  const tails = circuits.map((k) => (laid.paths[k] as readonly number[]).slice(common));
  const banned = first[Math.floor(random() * common)] as number;
  for (const k of circuits) laid.lift(k);
  const head = laid.way(node, circuits.length, banned);
  for (const [i, k] of circuits.entries())
    laid.put(k, withoutLoops(graph, root, [...head, ...(tails[i] as readonly number[])]));
}

/** The ends of edges, made once a graph. */
const ends = new WeakMap<HomeGraph, Int32Array>();

function otherEnd(graph: HomeGraph, edge: number, node: number): number {
  let both = ends.get(graph);
  if (!both) {
    both = new Int32Array(2 * graph.edges);
    for (let n = 0; n < graph.nodes; n++)
      for (let a = graph.first[n] as number; a < (graph.first[n + 1] as number); a++) {
        both[2 * (graph.edge[a] as number)] = n;
        both[2 * (graph.edge[a] as number) + 1] = graph.head[a] as number;
      }
    ends.set(graph, both);
  }
  const u = both[2 * edge] as number;
  return u === node ? (both[2 * edge + 1] as number) : u;
}

function withoutLoops(graph: HomeGraph, root: number, path: readonly number[]): number[] {
  const seen = new Map<number, number>([[root, 0]]);
  let out: number[] = [];
  let node = root;
  for (const e of path) {
    node = otherEnd(graph, e, node);
    out.push(e);
    const at = seen.get(node);
    if (at === undefined) seen.set(node, out.length);
    else {
      out = out.slice(0, at);
      for (const [n, length] of seen) if (length > at) seen.delete(n);
    }
  }
  return out;
}

/** Of each circuit, itself and the others, those whose ends are nearest along the edges first. */
function neighborsOf({ graph, terminals, search }: Problem): number[][] {
  return terminals.map((terminal) => {
    search.run(terminal, -1, graph.length);
    const far = terminals.map((other) => search.distance[other] as number);
    return terminals
      .map((_, k) => k)
      .sort((a, b) => (far[a] as number) - (far[b] as number))
      .slice(0, NEIGHBORS);
  });
}

function start(problem: Problem, order: 'far' | 'near' | 'straight' | 'any'): SharedRoutes {
  const { terminals, away } = problem;
  const laid = laidFrom(problem, []);
  const all = terminals.map((_, k) => k);
  const far = (k: number): number => away[terminals[k] as number] as number;
  if (order === 'straight') {
    const ways = all.map((k) => laid.way(terminals[k] as number, 1, -1));
    for (const [k, way] of ways.entries()) laid.put(k, way);
  } else {
    const turn =
      order === 'any'
        ? shuffled(all, steadyNumbers(5))
        : all.sort((a, b) => (order === 'near' ? far(a) - far(b) : far(b) - far(a)));
    for (const k of turn) laid.put(k, laid.way(terminals[k] as number, 1, -1));
  }
  return { cost: laid.cost(), paths: [...laid.paths] };
}

function descend(problem: Problem, from: SharedRoutes): SharedRoutes {
  const { terminals } = problem;
  const laid = laidFrom(problem, from.paths);
  for (let better = true; better; ) {
    better = false;
    for (let k = 0; k < terminals.length; k++) {
      const before = laid.paths[k] as readonly number[];
      const cost = laid.cost();
      laid.lift(k);
      laid.put(k, laid.way(terminals[k] as number, 1, -1));
      if (laid.cost() < cost - 1e-6) better = true;
      else {
        laid.lift(k);
        laid.put(k, before);
      }
    }
  }
  return { cost: laid.cost(), paths: [...laid.paths] };
}
