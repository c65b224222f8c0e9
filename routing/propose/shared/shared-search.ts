import { anneal, ROUNDING, type SharedRoutes } from './anneal.ts';
import { arcSearch } from './arc-paths.ts';
import { bestFew } from './best-few.ts';
import type { HomeGraph } from './home-graph.ts';
import { type Laid, type LayingWish, laidAlong } from './laid.ts';
import type { SharedPrice } from './shared-cost.ts';
import { shuffled, steadyNumbers } from './steady-numbers.ts';

/** Chains, each from its own start and seed. */
const CHAINS = 5;

/** Of each circuit, so many neighbors are known. */
const NEIGHBORS = 40;

/** A descent ends by itself; so many times all circuits are laid anew in it at most. */
const MOST_DESCENTS = 1000;

/** What a search begins with, and the best that it met, the cheapest first. */
export interface FoundShared {
  readonly first: SharedRoutes;
  readonly best: readonly SharedRoutes[];
}

/**
 * Good shared routes by annealed ruin and recreate: circuits near one another are taken out and each put back the cheapest
 * way given what lies, or a trunk is laid anew for all that share it; what is cheaper is kept, what is a little dearer at
 * first too. `rounds` are shared by several chains, each from another start and seed; each ends with a descent, in which
 * each circuit is laid anew until none moves. `keep` routes at most, the cheapest first, no two on the same edges.
 */
export function searchShared(
  graph: HomeGraph,
  root: number,
  terminals: readonly number[],
  price: SharedPrice,
  { rounds, keep, mayGoOn }: { readonly rounds: number; readonly keep: number; readonly mayGoOn: () => boolean },
): FoundShared {
  const search = arcSearch(graph, 'by edge');
  search.run(root, -1, graph.length);
  const away = search.distance.slice();
  const wish: LayingWish = { graph, root, terminals, price, search, away };
  const few = bestFew(Math.max(1, keep));
  /** Their costs summed anew: those of a long search carry the rounding of all its steps. */
  const summed = ({ paths }: SharedRoutes): SharedRoutes => ({ cost: laidAlong(wish, paths).cost(), paths });
  const starts = (['far', 'near', 'straight', 'any'] as const)
    .map((order) => descend(wish, start(wish, order), few.met))
    .sort((a, b) => a.cost - b.cost);
  const first = summed(few.found()[0] as SharedRoutes);
  if (terminals.length < 2) return { first, best: [first] };
  const neighbors = neighborsOf(wish);
  const each = Math.ceil(rounds / CHAINS);
  for (let chain = 0; chain < CHAINS && each > 0 && mayGoOn(); chain++) {
    const from = starts[Math.min(chain, starts.length - 1)] as SharedRoutes;
    const random = steadyNumbers(20_251 + 7_919 * chain);
    descend(wish, anneal(wish, from, neighbors, each, random, mayGoOn, few.met), few.met);
  }
  return { first, best: few.found().map(summed) };
}

/** Of each circuit, itself and the others, those whose ends are nearest along the edges first. */
function neighborsOf({ graph, terminals, search }: LayingWish): number[][] {
  return terminals.map((terminal) => {
    search.run(terminal, -1, graph.length);
    const far = terminals.map((other) => search.distance[other] as number);
    return terminals
      .map((_, k) => k)
      .sort((a, b) => (far[a] as number) - (far[b] as number))
      .slice(0, NEIGHBORS);
  });
}

/** Circuits laid one after another, each the cheapest way given those before it, or each as if it were alone. */
function start(wish: LayingWish, order: 'far' | 'near' | 'straight' | 'any'): SharedRoutes {
  const { terminals, away } = wish;
  const laid = laidAlong(wish);
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

/** Each circuit is laid the cheapest way given the others, until none moves. */
function descend(wish: LayingWish, from: SharedRoutes, met: (laid: Laid) => void): SharedRoutes {
  const { terminals } = wish;
  const laid = laidAlong(wish, from.paths);
  for (let better = true, times = 0; better && times < MOST_DESCENTS; times++) {
    better = false;
    for (let k = 0; k < terminals.length; k++) {
      const before = laid.paths[k] as readonly number[];
      const cost = laid.cost();
      laid.lift(k);
      laid.put(k, laid.way(terminals[k] as number, 1, -1));
      if (laid.cost() < cost * (1 - ROUNDING)) better = true;
      else {
        laid.lift(k);
        laid.put(k, before);
      }
    }
  }
  met(laid);
  return { cost: laid.cost(), paths: [...laid.paths] };
}
