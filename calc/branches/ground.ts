import { kept, steadyList } from '../../routing/kept/kept.ts';
import { between, distance } from '../../routing/plane/space.ts';
import type { Point3, Pullpoint, Raceway, Site } from '../../routing/site/site.ts';

/** What conduits are laid along: raceways by id and the pull points on each. */
export interface ConduitGround {
  readonly raceways: ReadonlyMap<string, Raceway>;
  /** Pull points within `tolerance` of a raceway, by raceway; raceways without one are absent. */
  readonly pulls: ReadonlyMap<string, readonly Pullpoint[]>;
  /** Distance, ft, within which a pull point is on a raceway. */
  readonly tolerance: number;
  /** Pull points on no raceway. */
  readonly loose: readonly Pullpoint[];
}

/** The raceways of a site and the pull points on them; one answer as long as neither changes. */
export const conduitGround = (site: Site): ConduitGround =>
  ground(site.raceways, site.pullpoints, site.rules.joinTolerance);

const ground = kept(
  (raceways: readonly Raceway[], pullpoints: readonly Pullpoint[], tolerance: number): ConduitGround => {
    const pulls = new Map<string, readonly Pullpoint[]>();
    if (pullpoints.length > 0) {
      for (const raceway of raceways) {
        const on = pullsOfRaceway(raceway, pullpoints, tolerance);
        if (on.length > 0) pulls.set(raceway.id, on);
      }
    }
    const placed = new Set([...pulls.values()].flat());
    return {
      raceways: new Map(raceways.map((raceway) => [raceway.id, raceway])),
      pulls,
      tolerance,
      loose: pullpoints.filter((pull) => !placed.has(pull)),
    };
  },
);

const steadyPulls = steadyList<Pullpoint>();

function pullsOfRaceway(raceway: Raceway, pullpoints: readonly Pullpoint[], tolerance: number): readonly Pullpoint[] {
  const [low, high] = boxOf(raceway.path, tolerance);
  const on = pullpoints.filter(
    ({ at }) =>
      at.every((value, axis) => value >= low[axis]! && value <= high[axis]!) &&
      raceway.path.some((from, i) => i > 0 && offFrom(at, raceway.path[i - 1]!, from) <= tolerance),
  );
  return steadyPulls(raceway, on);
}

/** Distance of a point from the straight between two others. */
function offFrom(at: Point3, from: Point3, to: Point3): number {
  const along = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  const square = along[0] ** 2 + along[1] ** 2 + along[2] ** 2;
  const dot = (at[0] - from[0]) * along[0] + (at[1] - from[1]) * along[1] + (at[2] - from[2]) * along[2];
  return distance(at, between(from, to, square === 0 ? 0 : Math.min(1, Math.max(0, dot / square))));
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
