import { distance } from '../../../plane/space.ts';
import type { Point3, Site } from '../../../site/site.ts';
import type { GrowingLattice } from './growing-lattice.ts';
import { APART } from './lines.ts';
import type { standingWays } from './standing-ways.ts';

/** What the raceways that are there meet. */
export interface StandingWish {
  readonly overhead: boolean;
  /** Places of the lattice in the ground; none where it does not go there. */
  readonly buried: readonly number[];
  /** Place of the entry, and the place of the lattice that is nearest to one of the plan. */
  readonly root: number;
  readonly placeOf: (at: readonly number[]) => number;
  /** How many circuits more find room in the conduits between two places. */
  readonly room: (a: Point3, b: Point3) => number;
}

/** Raceways that are there cost no raceway again. */
export function joinStanding(
  { points, put, join, isFree }: GrowingLattice,
  site: Site,
  { ways, taps }: ReturnType<typeof standingWays>,
  { overhead, buried, root, placeOf, room }: StandingWish,
): void {
  const known = new Map<string, number>();
  const nodeAt = (at: Point3): number => {
    const key = at.map((value) => Math.round(value * 1e4)).join(' ');
    const before = known.get(key);
    if (before !== undefined) return before;
    const node = put(at);
    known.set(key, node);
    const own = placeOf(at);
    const low = points[own]!;
    // What hangs does not come down into the ground to a raceway that is buried there: it meets it where that comes up.
    const meets = !overhead || at[2] >= 0;
    if (at[2] < 0) for (const deep of buried) if (distance(points[deep]!, at) < APART / 2) join(node, deep, 1, false);
    if (meets && Math.hypot(low[0] - at[0], low[1] - at[1]) < APART / 2 && isFree(at, low))
      join(node, own, 1, distance(at, low) > site.rules.joinTolerance);
    return node;
  };
  for (const { places } of ways)
    for (let i = 1; i < places.length; i++) {
      const [a, b] = [places[i - 1]!, places[i]!];
      join(nodeAt(a), nodeAt(b), 0, false, room(a, b));
    }
  for (const tap of taps) join(root, nodeAt(tap), 0, false, room(points[root]!, tap));
}
