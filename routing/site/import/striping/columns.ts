import { direction } from '../../../plane/direction.ts';
import { apart } from '../../../plane/distance.ts';
import type { Column, Point2 } from '../../site.ts';
import { meanOf, quarter } from './heads.ts';
import { fourSided, isWithin, realCorners } from './shapes.ts';

type Bare<T> = Omit<T, 'id'>;

/** Sides of a canopy column, feet. */
const COLUMN_SIDE = [0.2, 6] as const;

/** A column from a rectangle, from a round shape as the square about it, or from another small one as the box about it. */
export function columnFromShape(points: readonly Point2[], rounding: number): Bare<Column> | null {
  const figure = fourSided(points, rounding);
  if (figure?.square) {
    const { middle, along, across, degrees } = figure;
    if (!isWithin(along, COLUMN_SIDE) || !isWithin(across, COLUMN_SIDE)) return null;
    return { at: middle, ...sized(along, across, degrees) };
  }
  if (points.length < 4) return null;
  const middle = meanOf(points);
  const radii = points.map((point) => apart(point, middle));
  const [least, most] = [Math.min(...radii), Math.max(...radii)];
  if (points.length >= 6 && most - least <= 0.05 * most)
    return isWithin(2 * most, COLUMN_SIDE) ? { at: middle, size: [2 * most, 2 * most] } : null;
  return boxedColumn(points);
}

/** The box about a small shape, along its longest side: a wide flange, or a base with its corners cut. */
function boxedColumn(points: readonly Point2[]): Bare<Column> | null {
  const corners = realCorners(points);
  let [longest, degrees] = [0, 0];
  for (const [i, from] of corners.entries()) {
    const to = corners[(i + 1) % corners.length]!;
    const length = apart(from, to);
    if (length > longest + 1e-6)
      [longest, degrees] = [length, (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI];
  }
  const [ux, uy] = direction(degrees);
  const us = corners.map(([x, y]) => x * ux + y * uy);
  const vs = corners.map(([x, y]) => y * ux - x * uy);
  const [u0, u1, v0, v1] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
  if (!isWithin(u1 - u0, COLUMN_SIDE) || !isWithin(v1 - v0, COLUMN_SIDE)) return null;
  const [u, v] = [(u0 + u1) / 2, (v0 + v1) / 2];
  return { at: [u * ux - v * uy, u * uy + v * ux], ...sized(u1 - u0, v1 - v0, degrees) };
}

/** Size and turn of a column, the turn under a quarter. */
function sized(along: number, across: number, degrees: number): Pick<Bare<Column>, 'size' | 'rotation'> {
  const turn = quarter(degrees) % 180;
  const rotation = turn % 90;
  return { size: turn < 90 ? [along, across] : [across, along], ...(rotation === 0 ? {} : { rotation }) };
}
