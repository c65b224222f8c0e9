import type { Steel } from '../../../network/support/steel-near.ts';
import { distance } from '../../../plane/space.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import { groundLines, OUT_OF_GROUND, risersOf } from './ground-ways.ts';
import { crossingNear, type GrowingLattice } from './growing-lattice.ts';
import type { LotFrame } from './lot-frame.ts';

/** Nearer than this, feet, two places are one: those of a turned lot are rounded. */
const SAME = 1e-3;

/** What lies in the ground under a lattice that hangs. */
export interface GroundWish {
  readonly frame: LotFrame;
  readonly entry: Point3;
  readonly boxes: readonly Point3[];
  readonly steel: Steel;
  /** How deep it lies, feet. */
  readonly cover: number;
  /** A foot in the ground costs so many times what the hangers of a foot overhead do. */
  readonly times: number;
  /** Place of the entry, and the place overhead that is nearest to one of the plan. */
  readonly root: number;
  readonly placeOf: (at: readonly number[]) => number;
}

/** Trenches from the entry to where conduits come up to the lattice. Gives its places. */
export function layInGround(
  { points, put, join, isFree }: GrowingLattice,
  site: Site,
  { frame, entry, boxes, steel, cover, times, root, placeOf }: GroundWish,
): readonly number[] {
  const lines = groundLines(site, frame, entry, boxes, risersOf(site, steel).at);
  const wide = lines.v.at.length;
  const first = points.length;
  for (const a of lines.u.at) for (const b of lines.v.at) put([...frame.outOf([a, b]), -cover]);
  const dig = (a: number, b: number): void => {
    if (isFree(points[a]!, points[b]!)) join(a, b, times, true);
  };
  lines.u.at.forEach((_, i) => {
    for (let j = 0; j < wide; j++) {
      const n = first + i * wide + j;
      if (j + 1 < wide) dig(n, n + 1);
      if (i + 1 < lines.u.at.length) dig(n, n + wide);
    }
  });
  const under = crossingNear(frame, lines.u, lines.v);
  /** Down to a place of the ground, upright. */
  const down = (top: number, [x, y]: Point2): void => {
    const near = first + under([x, y]);
    const at: Point3 = [x, y, -cover];
    const isThere = distance(points[near]!, at) < SAME;
    const low = isThere ? near : put(at);
    if (!isThere) dig(near, low);
    if (isFree(points[top]!, points[low]!)) join(top, low, 1, true);
  };
  down(root, [entry[0], entry[1]]);
  for (const at of lines.risers) {
    const above = placeOf(at);
    const [x, y, z] = points[above]!;
    if (z <= OUT_OF_GROUND || Math.hypot(x - at[0], y - at[1]) > site.rules.hangReach) continue;
    const low = put([x, y, OUT_OF_GROUND]);
    if (isFree(points[above]!, points[low]!)) join(above, low, 1, true);
    down(low, [x, y]);
  }
  return Array.from({ length: points.length - first }, (_, k) => first + k);
}
