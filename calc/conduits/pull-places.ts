import { bendsOf } from '../../routing/network/bends.ts';
import { between, distance } from '../../routing/plane/space.ts';
import type { Point3 } from '../../routing/site/site.ts';

/** Most that may lie between two places where a conduit can be opened. */
export interface PullLimits {
  readonly bendLimit: number;
  readonly pullLimit: number;
}

const SLACK = 1e-6;

/** A pull point sits this far before a bend, ft, to have room for its fitting. Common practice. */
const SHORT = 1;

/**
 * Where pull points would bring a conduit within its limits: each as far along as the bends and feet before it allow, a
 * foot short of the bend where a bend is what stops it. Empty where none is needed. A single bend past the limit cannot be
 * cured and is passed over.
 */
export function pullPlaces(path: readonly Point3[], { bendLimit, pullLimit }: PullLimits): readonly Point3[] {
  const at = distancesOf(path);
  const length = at.at(-1) ?? 0;
  const bends = bendsOf(path).map((bend) => ({ at: at[bend.at]!, degrees: bend.degrees }));
  const places: Point3[] = [];
  let from = 0;
  for (let next = nextPlace(from); next !== null; next = nextPlace(from)) {
    places.push(pointAlong(path, at, next));
    from = next;
  }
  return places;

  function nextPlace(start: number): number | null {
    const farthest = start + pullLimit;
    let degrees = 0;
    let before = start;
    for (const bend of bends) {
      if (bend.at <= start + SLACK) continue;
      if (bend.at > farthest + SLACK) break;
      degrees += bend.degrees;
      if (degrees > bendLimit + SLACK && before > start) return Math.max((before + bend.at) / 2, bend.at - SHORT);
      before = bend.at;
    }
    return farthest < length - SLACK ? farthest : null;
  }
}

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
