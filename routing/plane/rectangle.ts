import { direction } from './direction.ts';
import type { Point2 } from './point.ts';

/** Four corners of a rectangle, counter-clockwise. */
export type Rectangle = readonly [Point2, Point2, Point2, Point2];

/** The rectangle of `size` [along its rotated x, along its rotated y] centred at `centre`, turned by `degrees`. */
export function rectangleAt(centre: Point2, size: readonly [number, number], degrees: number): Rectangle {
  const [ux, uy] = direction(degrees);
  const a = size[0] / 2;
  const b = size[1] / 2;
  const corner = (s: number, t: number): Point2 => [centre[0] + s * ux - t * uy, centre[1] + s * uy + t * ux];
  return [corner(-a, -b), corner(a, -b), corner(a, b), corner(-a, b)];
}
