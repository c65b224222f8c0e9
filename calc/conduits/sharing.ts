import { type Design, type HomeRun, homeRun } from './home-run.ts';
import type { Travel } from './travel-order.ts';
import type { Way } from './way.ts';

/** Home runs worked before, by their members, so that a grouping is not designed again when one box moves. */
interface Known {
  run: HomeRun | null | undefined;
  readonly next: WeakMap<Way, Known>;
}

const memory = new WeakMap<Design, WeakMap<Way, Known>>();

/** `homeRun` of the ways from `first` on, `count` of them; remembered. */
function homeRunOf(design: Design, { ways, shared }: Travel, first: number, count: number): HomeRun | null {
  let level = memory.get(design);
  if (level === undefined) {
    level = new WeakMap();
    memory.set(design, level);
  }
  let known: Known | undefined;
  for (let i = first; i < first + count; i++) {
    known = level.get(ways[i]!);
    if (known === undefined) {
      known = { run: undefined, next: new WeakMap() };
      level.set(ways[i]!, known);
    }
    level = known.next;
  }
  if (known === undefined) throw new RangeError('a home run holds one circuit or more');
  known.run ??= undefined;
  if (known.run === undefined)
    known.run = homeRun(design, ways.slice(first, first + count), shared.slice(first, first + count - 1));
  return known.run;
}

/** Costs closer than this, dollars, are one: the rounding of sums decides nothing. */
const SAME_COST = 1e-6;

/**
 * Shares conduits among circuits from one piece of equipment: the split of their travel order into home runs of at most
 * `rules.circuitsPerConduit` circuits that costs least in place. Circuits that cannot be sized even alone are left out.
 */
export function shareConduits(design: Design, travel: Travel): readonly HomeRun[] {
  const count = travel.ways.length;
  const most = design.rules.circuitsPerConduit;
  const best: number[] = [0];
  const last: (HomeRun | null)[] = [null];
  const taken: number[] = [0];
  for (let end = 1; end <= count; end++) {
    best.push(Infinity);
    last.push(null);
    taken.push(1);
    for (let size = 1; size <= Math.min(most, end); size++) {
      const run = homeRunOf(design, travel, end - size, size);
      const cost = best[end - size]! + (run?.cost ?? (size === 1 ? 0 : Infinity));
      if (cost >= best[end]! - SAME_COST) continue;
      best[end] = cost;
      last[end] = run;
      taken[end] = size;
    }
  }
  const runs: HomeRun[] = [];
  for (let end = count; end > 0; end -= taken[end]!) {
    const run = last[end];
    if (run) runs.push(run);
  }
  return runs.reverse();
}
