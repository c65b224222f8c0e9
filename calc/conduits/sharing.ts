import type { Design } from './design.ts';
import { type HomeRun, homeRun } from './home-run.ts';
import type { Travel } from './travel-order.ts';
import type { Way } from './way.ts';

/** What is known of one set of members: what it costs, and once it is chosen the home run itself. */
interface Known {
  /** Dollars in place; Infinity where a member cannot be sized so. */
  readonly cost: number;
  run: HomeRun | null;
}

interface Node {
  known: Known | null;
  readonly next: WeakMap<Way, Node>;
}

const memory = new WeakMap<Design, WeakMap<Way, Node>>();

const nodeOf = (level: WeakMap<Way, Node>, way: Way): Node => {
  let node = level.get(way);
  if (node === undefined) {
    node = { known: null, next: new WeakMap() };
    level.set(way, node);
  }
  return node;
};

/** How far each of the members goes with the next one, ft. `members` are places in the travel order, ascending. */
function sharedBy({ shared }: Travel, members: readonly number[]): readonly number[] {
  const between: number[] = [];
  for (let i = 0; i + 1 < members.length; i++) {
    let least = Infinity;
    for (let place = members[i]!; place < members[i + 1]!; place++) least = Math.min(least, shared[place]!);
    between.push(least);
  }
  return between;
}

const designed = (design: Design, travel: Travel, members: readonly number[]): HomeRun | null =>
  homeRun(
    design,
    members.map((place) => travel.ways[place]!),
    sharedBy(travel, members),
  );

function knownOf(design: Design, travel: Travel, members: readonly number[]): Known {
  let level = memory.get(design);
  if (level === undefined) {
    level = new WeakMap();
    memory.set(design, level);
  }
  let node: Node | null = null;
  for (const place of members) {
    node = nodeOf(level, travel.ways[place]!);
    level = node.next;
  }
  if (node === null) throw new RangeError('a home run holds one circuit or more');
  // Only the cost is kept: most sets are weighed and never chosen.
  node.known ??= { cost: designed(design, travel, members)?.cost ?? Infinity, run: null };
  return node.known;
}

/** Dollars in place of a home run of these members; Infinity where one cannot be sized so. Remembered. */
const costOf = (design: Design, travel: Travel, members: readonly number[]): number =>
  knownOf(design, travel, members).cost;

function homeRunOf(design: Design, travel: Travel, members: readonly number[]): HomeRun | null {
  const known = knownOf(design, travel, members);
  known.run ??= designed(design, travel, members);
  return known.run;
}

/** Costs closer than this, dollars, are one: the rounding of sums decides nothing. */
const SAME_COST = 1e-6;

/**
 * Shares conduits among circuits from one piece of equipment: the split of their travel order into home runs of at most
 * `rules.circuitsPerConduit` circuits that costs least in place. Circuits that cannot be sized even alone are left out.
 */
export function shareConduits(design: Design, travel: Travel): readonly HomeRun[] {
  return leastSplit(design, travel).flatMap((members) => homeRunOf(design, travel, members) ?? []);
}

function leastSplit(design: Design, travel: Travel): readonly (readonly number[])[] {
  const count = travel.ways.length;
  const most = design.rules.circuitsPerConduit;
  const best: number[] = [0];
  const last: (readonly number[])[] = [[]];
  for (let end = 1; end <= count; end++) {
    best.push(Infinity);
    last.push([end - 1]);
    for (let size = 1; size <= Math.min(most, end); size++) {
      const members = Array.from({ length: size }, (_, i) => end - size + i);
      const cost = best[end - size]! + costOf(design, travel, members);
      if (cost >= best[end]! - SAME_COST) continue;
      best[end] = cost;
      last[end] = members;
    }
  }
  const groups: (readonly number[])[] = [];
  for (let end = count; end > 0; end -= last[end]!.length) groups.push(last[end]!);
  return groups.reverse();
}
