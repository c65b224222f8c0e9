import type { Point3 } from '../../site/site.ts';
import type { HomeGraph } from '../shared/home-graph.ts';
import type { SharedPrice } from '../shared/shared-cost.ts';
import type { Joining } from './raceway-paths.ts';
import { turningWays } from './turning-ways.ts';
import { type LaidOn, roughPrice, someAnew, type Ways } from './ways-anew.ts';

/** What ways come to once they are drawn and planned. */
export interface Judged {
  readonly cost: number;
  /** What is due for them in the end, where the cost has parts of what is paid by wholes; the cost where it is not given. */
  readonly due?: number;
  /** Failing findings; worked when they are asked for. */
  readonly fails: () => number;
}

export interface PaidProblem {
  readonly graph: HomeGraph;
  readonly points: readonly Point3[];
  readonly root: number;
  readonly terminals: readonly number[];
  /** By which new ways are laid before they are judged. */
  readonly price: SharedPrice;
  /** Which edges come to be drawn. */
  readonly isNew: readonly boolean[];
  readonly judge: (ways: Ways, joining: Joining) => Judged;
}

/** Ways, and which of their straights are one raceway. */
interface Drawn {
  readonly ways: Ways;
  readonly joining: Joining;
}

/** And what they come to. */
interface Found extends Drawn {
  readonly cost: number;
  readonly due: number;
}

/** So many tries at most for each that is judged: others come to what was judged before, or to much more. */
const TRIES = 6;
/** What is dearer by so much before it is judged is not judged. */
const FAR_OFF = 1.06;
/** After so many that were no better, it goes on from the best. */
const PATIENCE = 40;
/** After so many it ends: what there was to find was found. */
const ENOUGH = 150;
/** What is dearer by up to such a share is taken as a place to go on from. */
const WORSE = 0.004;
/** Of all tries, such a part draws otherwise than what it goes on from. */
const OTHERWISE = 0.15;
const OTHER = { 'straight on': 'as circuits go', 'as circuits go': 'straight on' } as const;

/**
 * Goes on from ways that were found by a price a foot, by what they come to when they are drawn and planned: some
 * circuits are laid anew, or the same ways drawn as other raceways. It goes on from what is cheaper and fails no more; of
 * all that was judged that is given for which least is due. The steps do not depend on how many there are to be: more of
 * them never give what more is due for. The same input gives the same answer.
 * @param pool the first one is what the others must not fail more than
 * @param rounds how many are judged beside those of the pool
 */
export function searchPaid(
  problem: PaidProblem,
  pool: readonly Ways[],
  rounds: number,
  mayGoOn: () => boolean,
  tell: (done: number) => void = () => {},
): Found {
  const { graph, points, root, terminals, price, judge } = problem;
  const on: LaidOn = {
    graph,
    turning: turningWays(graph, points, root),
    terminals,
    price,
    turnPrice: 3 * price.conduit,
  };
  const random = steady(7_307);
  const first: Drawn = { ways: pool[0]!, joining: 'straight on' };
  const judged = judge(first.ways, first.joining);
  const allowed = once(judged.fails);
  const isSound = (one: Judged): boolean => one.fails() <= allowed();
  let least: Found = { ...first, cost: judged.cost, due: judged.due ?? judged.cost };
  const judgedWhole = (drawn: Drawn): Candidate => {
    const one = judge(drawn.ways, drawn.joining);
    const isGood = once(() => isSound(one));
    const found: Found = { ...drawn, cost: one.cost, due: one.due ?? one.cost };
    if (isLess(found, least) && isGood()) least = found;
    return { found, isGood };
  };
  const seen = drawnAlike(problem.isNew);
  seen.add(first);
  const plain = pool.slice(1).map((ways): Drawn => ({ ways, joining: 'straight on' }));
  let best = bestOf(least, plain, seen, judgedWhole, mayGoOn);
  best = bestOf(best, [{ ways: best.ways, joining: 'as circuits go' }], seen, judgedWhole, mayGoOn);
  if (terminals.length === 0) return least;
  let now = best;
  let limit = FAR_OFF * roughPrice(on, best.ways);
  let done = 0;
  let stale = 0;
  for (let tries = 0; tries < TRIES * rounds && done < rounds && stale < ENOUGH; tries++) {
    const joining = random() < OTHERWISE ? OTHER[now.joining] : now.joining;
    const ways = someAnew(on, now.ways, random);
    if (ways === null || seen.has({ ways, joining }) || roughPrice(on, ways) > limit) continue;
    if (!mayGoOn()) break;
    seen.add({ ways, joining });
    tell(done++);
    const { found, isGood } = judgedWhole({ ways, joining });
    const slack = WORSE * best.cost * random() ** 3;
    if (found.cost < now.cost + slack && isGood()) now = found;
    if (now.cost < best.cost - 1e-6) {
      best = now;
      stale = 0;
      limit = Math.max(limit, FAR_OFF * roughPrice(on, best.ways));
    } else if (++stale % PATIENCE === 0) now = best;
  }
  return least;
}

/** Something that was judged, and whether it fails no more than the first, worked when it is asked for. */
interface Candidate {
  readonly found: Found;
  readonly isGood: () => boolean;
}

function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => {
    known ??= { value: work() };
    return known.value;
  };
}

/** Less is due, or as much and it costs less. */
const isLess = (a: Found, b: Found): boolean =>
  a.due < b.due - 1e-6 || (a.due < b.due + 1e-6 && a.cost < b.cost - 1e-6);

/** The cheapest of some, and of what there was, that is sound. */
function bestOf(
  there: Found,
  others: readonly Drawn[],
  seen: Seen,
  judged: (one: Drawn) => Candidate,
  mayGoOn: () => boolean,
): Found {
  let best = there;
  for (const one of others) {
    if (seen.has(one) || !mayGoOn()) continue;
    seen.add(one);
    const { found, isGood } = judged(one);
    if (found.cost < best.cost - 1e-6 && isGood()) best = found;
  }
  return best;
}

interface Seen {
  readonly has: (one: Drawn) => boolean;
  readonly add: (one: Drawn) => void;
}

/** What was judged: those are alike that draw the same new edges in one manner. */
function drawnAlike(isNew: readonly boolean[]): Seen {
  const keys = new Set<string>();
  const keyOf = ({ ways, joining }: Drawn): string => {
    const edges = [...new Set(ways.flat())].filter((e) => isNew[e]);
    return `${joining} ${edges.sort((a, b) => a - b).join(' ')}`;
  };
  return { has: (one) => keys.has(keyOf(one)), add: (one) => void keys.add(keyOf(one)) };
}

/** Numbers from 0 up to 1 from a fixed start. */
function steady(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
