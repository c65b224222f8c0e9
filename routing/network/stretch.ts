import { between, COINCIDENT, distance } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';
import { bendsOf } from './bends.ts';
import type { Run } from './run.ts';

/** A part of a run between two places where it can be opened. Distances are from the entry along the run, feet. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly path: readonly Point3[];
  /** Raceway id of each leg of `path`; null on a tap or a joint's gap. */
  readonly legs: readonly (string | null)[];
  /** Changes of direction over 1 degree within the stretch; one at a place where it can be opened is not bent conduit. */
  readonly bends: number;
  readonly bendDegrees: number;
}

/**
 * The run cut at `breakpoints` (distances along it, in any order; those at or outside its ends cut nothing): pull
 * points, and junctions where runs part. Entry and box always end a stretch. A charger without a run has none.
 */
export function stretchesBetween(run: Pick<Run, 'path' | 'legs'>, breakpoints: readonly number[]): Stretch[] {
  const { path, legs } = run;
  if (path.length < 2) return [];
  const along = distancesAlong(path);
  const total = along[along.length - 1]!;
  const cuts = [...breakpoints].sort((a, b) => a - b);
  const stretches: Stretch[] = [];
  let from = 0;
  let vertex = 1;
  let start = path[0]!;
  for (const cut of [...cuts, total]) {
    const isLast = cut === total;
    if (cut - from < COINCIDENT || (!isLast && total - cut < COINCIDENT)) continue;
    const points: Point3[] = [start];
    const ids: (string | null)[] = [];
    while (vertex < path.length - 1 && along[vertex]! < cut - COINCIDENT) {
      points.push(path[vertex]!);
      ids.push(legs[vertex - 1]!);
      vertex++;
    }
    const end = pointAt(path, along, vertex, cut);
    points.push(end);
    ids.push(legs[vertex - 1]!);
    if (Math.abs(along[vertex]! - cut) <= COINCIDENT) vertex++;
    const bends = bendsOf(points);
    stretches.push({
      from,
      to: cut,
      length: cut - from,
      path: points,
      legs: ids,
      bends: bends.length,
      bendDegrees: bends.reduce((sum, { degrees }) => sum + degrees, 0),
    });
    from = cut;
    start = end;
    if (isLast) break;
  }
  return stretches;
}

/** Distance of every point of a path from its first, along it. */
export function distancesAlong(path: readonly Point3[]): Float64Array {
  const along = new Float64Array(path.length);
  for (let i = 1; i < path.length; i++) along[i] = along[i - 1]! + distance(path[i - 1]!, path[i]!);
  return along;
}

/** The point at a distance along a path, known to lie on the part that ends at `vertex`. */
function pointAt(path: readonly Point3[], along: Float64Array, vertex: number, at: number): Point3 {
  if (Math.abs(along[vertex]! - at) <= COINCIDENT) return path[vertex]!;
  const before = along[vertex - 1]!;
  return between(path[vertex - 1]!, path[vertex]!, (at - before) / (along[vertex]! - before));
}
