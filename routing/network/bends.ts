import { hypot3 } from '../plane/hypot.ts';
import { COINCIDENT, distance } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';

/** A change of direction of no more than this many degrees is drawing slack, not a bend. */
const LEAST_BEND = 1;
const LEAST_BEND_COSINE = Math.cos((LEAST_BEND * Math.PI) / 180);

/** Whether a way that goes along (ax, ay, az) and then along (bx, by, bz) bends; never where either has no length. */
export function isBend(ax: number, ay: number, az: number, bx: number, by: number, bz: number): boolean {
  const dot = ax * bx + ay * by + az * bz;
  return dot < LEAST_BEND_COSINE * Math.sqrt((ax * ax + ay * ay + az * az) * (bx * bx + by * by + bz * bz));
}

export interface Bend {
  /** Index of the point of the path at which it is made. */
  readonly at: number;
  readonly degrees: number;
}

/** Changes of direction over 1 degree along a path, in order. Points that repeat the one before are no change. */
export function bendsOf(path: readonly Point3[]): Bend[] {
  const bends: Bend[] = [];
  let before = 0;
  for (let i = 1; i + 1 < path.length; i++) {
    const a = path[before]!;
    const b = path[i]!;
    const c = path[i + 1]!;
    if (distance(b, c) < COINCIDENT) continue;
    if (distance(a, b) >= COINCIDENT) {
      const degrees = angle(b[0] - a[0], b[1] - a[1], b[2] - a[2], c[0] - b[0], c[1] - b[1], c[2] - b[2]);
      if (degrees > LEAST_BEND) bends.push({ at: i, degrees });
    }
    before = i;
  }
  return bends;
}

/** Angle between two directions, degrees: from cross and dot product, exact for small angles too. */
function angle(ax: number, ay: number, az: number, bx: number, by: number, bz: number): number {
  const cross = hypot3(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx);
  return (Math.atan2(cross, ax * bx + ay * by + az * bz) * 180) / Math.PI;
}
