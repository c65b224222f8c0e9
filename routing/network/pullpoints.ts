import Flatbush from 'flatbush';
import { between, distance, LENGTH_SLACK } from '../plane/space.ts';
import type { Point3, Pullpoint } from '../site/site.ts';
import type { Run } from './run.ts';
import { distancesAlong } from './stretch.ts';

/** A pull box or conduit body on a run, and how far along the run from the entry it is, feet. */
export interface PullpointOnRun {
  readonly id: string;
  readonly at: number;
}

const indexes = new WeakMap<readonly Pullpoint[], Flatbush>();

/**
 * The pull points that lie on a run, in order of travel: those within `tolerance` feet of its path in space, taps
 * excepted, each where the path passes it closest. One within `tolerance` of a corner is at the corner: a box there
 * takes the place of the bend.
 */
export function pullpointsOnRun(
  run: Pick<Run, 'path' | 'legs'>,
  pullpoints: readonly Pullpoint[],
  tolerance: number,
): PullpointOnRun[] {
  if (pullpoints.length === 0 || run.path.length < 2) return [];
  const { path, legs } = run;
  const index = indexOf(pullpoints);
  const along = distancesAlong(path);
  const limit = tolerance + LENGTH_SLACK;
  const closest = new Map<number, { gap: number; at: number }>();
  for (let i = 0; i + 1 < path.length; i++) {
    if (isTap(legs, i)) continue;
    const a = path[i]!;
    const b = path[i + 1]!;
    const near = index.search(
      Math.min(a[0], b[0]) - limit,
      Math.min(a[1], b[1]) - limit,
      Math.max(a[0], b[0]) + limit,
      Math.max(a[1], b[1]) + limit,
    );
    for (const p of near) {
      const { at } = pullpoints[p]!;
      const t = closestShare(a, b, at);
      const gap = distance(at, between(a, b, t));
      if (gap > limit || gap >= (closest.get(p)?.gap ?? Number.POSITIVE_INFINITY) - LENGTH_SLACK) continue;
      const place = along[i]! + t * (along[i + 1]! - along[i]!);
      const corner = distance(at, a) <= limit ? along[i]! : distance(at, b) <= limit ? along[i + 1]! : place;
      closest.set(p, { gap, at: corner });
    }
  }
  return [...closest]
    .map(([p, { at }]) => ({ id: pullpoints[p]!.id, at }))
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

/** The first and last legs are taps where they lie on no raceway. */
const isTap = (legs: Run['legs'], i: number): boolean => legs[i] === null && (i === 0 || i === legs.length - 1);

function indexOf(pullpoints: readonly Pullpoint[]): Flatbush {
  const before = indexes.get(pullpoints);
  if (before) return before;
  const index = new Flatbush(pullpoints.length);
  for (const { at } of pullpoints) index.add(at[0], at[1], at[0], at[1]);
  index.finish();
  indexes.set(pullpoints, index);
  return index;
}

/** Share of the straight from `a` to `b`, 0 to 1, at its point closest to `p`. */
function closestShare(a: Point3, b: Point3, p: Point3): number {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const square = ux * ux + uy * uy + uz * uz;
  if (square === 0) return 0;
  const t = ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy + (p[2] - a[2]) * uz) / square;
  return Math.min(1, Math.max(0, t));
}
