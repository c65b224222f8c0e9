import type { Point2 } from './point.ts';

/** Length of the vector (x, y). `Math.hypot` guards against overflow, which no site comes near, at ten times the cost. */
export const length2 = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** Straight distance between two points of the plan. */
export const apart = (a: Point2, b: Point2): number => length2(b[0] - a[0], b[1] - a[1]);
