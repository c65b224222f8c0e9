import { otherEnd } from './home-graph.ts';
import { type Laid, type LayingWish, laidAlong, withoutRings } from './laid.ts';
import { ruin } from './ruin.ts';

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

/** Rounds are short: whether to go on is asked before one of so many. */
const ASKED_EVERY = 32;

/** Cheaper by less than this part is rounding. */
export const ROUNDING = 1e-10;

/** Nearly -ln(u), from roots alone: the same in every engine to the last digit. */
const chanceOf = (u: number): number => 4 * (1 / Math.sqrt(Math.sqrt(Math.max(1e-12, u))) - 1);

/**
 * Annealed ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck 2000), `rounds` rounds of it from some
 * routes of two circuits or more: the cheapest that were met. `met` hears of what is gone on from.
 */
export function anneal(
  wish: LayingWish,
  from: SharedRoutes,
  neighbors: readonly (readonly number[])[],
  rounds: number,
  random: () => number,
  mayGoOn: () => boolean,
  met: (laid: Laid) => void,
): SharedRoutes {
  const { terminals } = wish;
  const laid = laidAlong(wish, from.paths);
  let best = from;
  let now = laid.cost();
  let heat = (from.cost / terminals.length) * WARM;
  const cooler = 1 - COOLING / Math.max(2 * COOLING, rounds);
  for (let round = 0; round < rounds && (round % ASKED_EVERY > 0 || mayGoOn()); round++) {
    heat *= cooler;
    const { out, banned } = ruin(laid.paths, neighbors, random);
    const before = out.map((k) => laid.paths[k] as readonly number[]);
    if (round % BLOCK_EVERY === 0) moveBlock(wish, laid, out, random);
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
      met(laid);
      if (now < best.cost * (1 - ROUNDING)) best = { cost: now, paths: [...laid.paths] };
    } else {
      for (const k of out) laid.lift(k);
      for (const [i, k] of out.entries()) laid.put(k, before[i] as readonly number[]);
    }
  }
  return best;
}

/** Lays the shared start of some circuits anew, as one: from the root to the last node that all of them pass. */
function moveBlock({ graph, root }: LayingWish, laid: Laid, circuits: readonly number[], random: () => number): void {
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
    laid.put(k, withoutRings(graph, root, [...head, ...(tails[i] as readonly number[])]));
}
