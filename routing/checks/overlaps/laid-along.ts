import { hypot3 } from '../../plane/hypot.ts';
import { distance } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';

/** Two lines nearer than this, feet, are in one place. Common practice, no source. */
const APART = 0.1;

/** Length, feet, over which one path lies in the place of another, level and all; crossings and ends that meet are none. */
export function lengthInPlaceOf(a: readonly Point3[], b: readonly Point3[]): number {
  let length = 0;
  for (let i = 1; i < a.length; i++) {
    const [from, to] = [a[i - 1]!, a[i]!];
    for (let j = 1; j < b.length; j++) length += legAlong(from, to, b[j - 1]!, b[j]!);
  }
  return length;
}

function legAlong(a0: Point3, a1: Point3, b0: Point3, b1: Point3): number {
  for (const axis of [0, 1, 2] as const)
    if (
      Math.max(a0[axis], a1[axis]) + APART < Math.min(b0[axis], b1[axis]) ||
      Math.max(b0[axis], b1[axis]) + APART < Math.min(a0[axis], a1[axis])
    )
      return 0;
  const long = distance(a0, a1);
  if (long === 0) return 0;
  const unit = [(a1[0] - a0[0]) / long, (a1[1] - a0[1]) / long, (a1[2] - a0[2]) / long] as const;
  const along = (p: Point3): number => (p[0] - a0[0]) * unit[0] + (p[1] - a0[1]) * unit[1] + (p[2] - a0[2]) * unit[2];
  const [s0, s1] = [along(b0), along(b1)];
  const low = Math.max(0, Math.min(s0, s1));
  const high = Math.min(long, Math.max(s0, s1));
  if (!(high > low)) return 0;
  const offAt = (s: number): number => {
    const t = (s - s0) / (s1 - s0);
    return hypot3(
      b0[0] + t * (b1[0] - b0[0]) - a0[0] - s * unit[0],
      b0[1] + t * (b1[1] - b0[1]) - a0[1] - s * unit[1],
      b0[2] + t * (b1[2] - b0[2]) - a0[2] - s * unit[2],
    );
  };
  return offAt(low) <= APART && offAt(high) <= APART ? high - low : 0;
}
