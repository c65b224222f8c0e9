import { hypot2 } from './hypot.ts';
import type { Point2, Point3 } from './point.ts';

/** Points nearer than this, in feet, are one point: far under any drawing's accuracy, far over rounding at 100,000 ft. */
export const COINCIDENT = 1e-7;

/** Slack, in feet, for comparing a length with a limit or with another length: exactly at the limit is within it. */
export const LENGTH_SLACK = 1e-9;

/** A point as the plan shows it, without its elevation. */
export const inPlan = ([x, y]: Point3): Point2 => [x, y];

/** Straight distance between two points in space. */
export function distance(a: Point3, b: Point3): number {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const z = b[2] - a[2];
  return Math.sqrt(x * x + y * y + z * z);
}

/** The point at a share `t` of the way from `a` to `b`; exactly `a` at 0 and `b` at 1. */
export function between(a: Point3, b: Point3, t: number): Point3 {
  if (t === 0) return a;
  if (t === 1) return b;
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

/** How a straight line in space lies: its lower and its higher end, its length, feet, and its degrees from level. */
export function slopeOf(
  a: Point3,
  b: Point3,
): { readonly low: number; readonly high: number; readonly length: number; readonly degrees: number } {
  const [low, high] = a[2] < b[2] ? [a[2], b[2]] : [b[2], a[2]];
  const flat = hypot2(b[0] - a[0], b[1] - a[1]);
  return { low, high, length: distance(a, b), degrees: (Math.atan2(high - low, flat) * 180) / Math.PI };
}
