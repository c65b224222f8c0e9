import { bendsOf } from '../../../routing/network/bends.ts';
import { between, distance } from '../../../routing/plane/space.ts';
import type { Point3 } from '../../../routing/site/site.ts';

/** Most that may lie between two places where a conduit can be opened. */
export interface PullLimits {
  readonly bendLimit: number;
  readonly pullLimit: number;
}

const SLACK = 1e-6;

/** A place for a pull point: where, and how far along from the start of the path. */
export interface PullPlace {
  readonly at: Point3;
  /** Feet. */
  readonly along: number;
}

/**
 * Where pull points would bring a conduit within its limits: each as far along as the bends and feet before it allow, and
 * so as few as can be. Where a bend is what stops it, it stands at that bend, for a turn inside a box or a conduit body is
 * no bend of the conduit. Empty where none is needed.
 */
export function pullPlaces(path: readonly Point3[], { bendLimit, pullLimit }: PullLimits): readonly PullPlace[] {
  const at = distancesOf(path);
  const length = at.at(-1) ?? 0;
  const bends = bendsOf(path).map((bend) => ({ at: at[bend.at]!, degrees: bend.degrees }));
  const places: PullPlace[] = [];
  let from = 0;
  for (let next = nextPlace(from); next !== null; next = nextPlace(from)) {
    places.push({ at: pointAlong(path, at, next), along: next });
    from = next;
  }
  return places;

  function nextPlace(start: number): number | null {
    const farthest = start + pullLimit;
    let degrees = 0;
    for (const bend of bends) {
      if (bend.at <= start + SLACK) continue;
      if (bend.at > farthest + SLACK) break;
      degrees += bend.degrees;
      if (degrees > bendLimit + SLACK) return bend.at;
    }
    return farthest < length - SLACK ? farthest : null;
  }
}

/** The point so many feet along a path. */
export const placeAlong = (path: readonly Point3[], far: number): Point3 => pointAlong(path, distancesOf(path), far);

function distancesOf(path: readonly Point3[]): readonly number[] {
  const at = [0];
  for (let i = 1; i < path.length; i++) at.push(at[i - 1]! + distance(path[i - 1]!, path[i]!));
  return at;
}

function pointAlong(path: readonly Point3[], at: readonly number[], far: number): Point3 {
  let leg = 0;
  while (leg + 2 < path.length && at[leg + 1]! < far) leg++;
  const span = at[leg + 1]! - at[leg]!;
  return between(path[leg]!, path[leg + 1]!, span === 0 ? 0 : (far - at[leg]!) / span);
}
