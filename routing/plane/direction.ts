import type { Point2 } from './point.ts';

/**
 * The unit vector at an angle in degrees counter-clockwise from +x. Exact at quarter turns, where the cosine of the
 * rounded radians is not, so that a square lot keeps its round coordinates.
 */
export function direction(degrees: number): Point2 {
  const turn = ((degrees % 360) + 360) % 360;
  if (turn === 0) return [1, 0];
  if (turn === 90) return [0, 1];
  if (turn === 180) return [-1, 0];
  if (turn === 270) return [0, -1];
  const radians = (turn * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}
