import type { Point3, Pullpoint, Raceway, Site } from '../../routing/site/site.ts';
import { remembered, settled } from '../memo.ts';

/** What conduits are laid along: raceways by id and the pull points on each. */
export interface Ground {
  readonly raceways: ReadonlyMap<string, Raceway>;
  /** Pull points within `tolerance` of a raceway, by raceway; raceways without one are absent. */
  readonly pulls: ReadonlyMap<string, readonly Pullpoint[]>;
  /** Distance, ft, within which a pull point is on a raceway. */
  readonly tolerance: number;
}

/** The raceways of a site and the pull points on them; one answer as long as neither changes. */
export const groundOf = (site: Site): Ground => ground(site.raceways, site.pullpoints, site.rules.joinTolerance);

const ground = remembered(
  (raceways: readonly Raceway[], pullpoints: readonly Pullpoint[], tolerance: number): Ground => {
    const pulls = new Map<string, readonly Pullpoint[]>();
    if (pullpoints.length > 0) {
      for (const raceway of raceways) {
        const on = pullsOfRaceway(raceway, pullpoints, tolerance);
        if (on.length > 0) pulls.set(raceway.id, on);
      }
    }
    return { raceways: new Map(raceways.map((raceway) => [raceway.id, raceway])), pulls, tolerance };
  },
);

const lastPulls = new WeakMap<Raceway, readonly Pullpoint[]>();

function pullsOfRaceway(raceway: Raceway, pullpoints: readonly Pullpoint[], tolerance: number): readonly Pullpoint[] {
  const [low, high] = boxOf(raceway.path, tolerance);
  const on = pullpoints.filter(({ at }) => at.every((value, axis) => value >= low[axis]! && value <= high[axis]!));
  const kept = settled(lastPulls.get(raceway), on);
  lastPulls.set(raceway, kept);
  return kept;
}

function boxOf(path: readonly Point3[], margin: number): readonly [low: number[], high: number[]] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const point of path) {
    point.forEach((value, axis) => {
      low[axis] = Math.min(low[axis]!, value - margin);
      high[axis] = Math.max(high[axis]!, value + margin);
    });
  }
  return [low, high];
}
