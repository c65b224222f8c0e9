import type { Point2 } from '../../site.ts';
import { BUDGET } from '../imported.ts';
import { type DxfRecord, numberOf, pointsOf } from './records.ts';

/** Takes a point of a block to the drawing: the columns of a matrix and where the origin goes. */
export type Placed = readonly [a: number, b: number, c: number, d: number, e: number, f: number];
export const AS_IT_IS: Placed = [1, 0, 0, 1, 0, 0];

export const taken = ([a, b, c, d, e, f]: Placed, [x, y]: Point2): Point2 => [a * x + c * y + e, b * x + d * y + f];

/** A placing within another. */
export function placedWithin(outer: Placed, inner: Placed): Placed {
  if (inner === AS_IT_IS) return outer;
  if (outer === AS_IT_IS) return inner;
  const [a, b, c, d, e, f] = inner;
  const [p, q, r, s] = outer;
  const [x, y] = taken(outer, [e, f]);
  return [p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d, x, y];
}

/** How much larger the longer way of a placing makes what it places. */
export const largest = ([a, b, c, d]: Placed): number => Math.max(Math.hypot(a, b), Math.hypot(c, d));

/** Kinds whose points lie in the plane that their extrusion names; those of the others lie in the drawing's own. */
const IN_OWN_PLANE = new Set(
  'ARC CIRCLE LWPOLYLINE POLYLINE SOLID TRACE INSERT HATCH MPOLYGON TEXT ATTRIB SHAPE'.split(' '),
);
/** A plane nearer to level than this goes by another axis (open DXF reference, arbitrary axis algorithm). */
const NEAR_LEVEL = 1 / 64;

/** The extrusion of an entity, of length one; null where it has none to speak of. */
export function extrusionOf(record: DxfRecord): readonly [x: number, y: number, z: number] | null {
  const [x, y, z] = [numberOf(record, 210, 0), numberOf(record, 220, 0), numberOf(record, 230, 1)];
  const length = Math.hypot(x, y, z);
  return length > 1e-9 ? [x / length, y / length, z / length] : null;
}

/**
 * Where the plane of an entity lies, seen in plan: turned over or tilted as its extrusion says, at its elevation; null
 * where that is damaged.
 */
export function planeOf(record: DxfRecord): Placed | null {
  if (!IN_OWN_PLANE.has(record.kind) || !record.codes.includes(210)) return AS_IT_IS;
  const normal = extrusionOf(record);
  if (!normal) return null;
  const [x, y, z] = normal;
  if (Math.hypot(x, y) < 1e-9 && z > 0) return AS_IT_IS;
  const level = Math.abs(x) < NEAR_LEVEL && Math.abs(y) < NEAR_LEVEL;
  // The y axis crossed with the normal, or the z axis.
  const cross = level ? [z, 0, -x] : [-y, x, 0];
  const length = Math.hypot(...cross);
  const [ax, ay, az] = cross.map((side) => side / length) as [number, number, number];
  const elevation = numberOf(record, record.kind === 'LWPOLYLINE' ? 38 : 30, 0);
  const placed: Placed = [ax, ay, y * az - z * ay, z * ax - x * az, elevation * x, elevation * y];
  return placed.every(Number.isFinite) ? placed : null;
}

/** The ways a block is put in: one, or an array of rows and columns; null where they are damaged or too many. */
export function waysIn(record: DxfRecord, base: Point2): readonly Placed[] | null {
  const plane = planeOf(record);
  const [at] = pointsOf(record, 10);
  if (!plane || !at) return null;
  const scale = [numberOf(record, 41, 1), numberOf(record, 42, 1)] as const;
  const turn = (numberOf(record, 50, 0) * Math.PI) / 180;
  const columns = Math.trunc(numberOf(record, 70, 1)) || 1;
  const rows = Math.trunc(numberOf(record, 71, 1)) || 1;
  if (!(columns >= 1 && rows >= 1 && columns * rows <= BUDGET.entities)) return null;
  const spacing = [numberOf(record, 44, 0), numberOf(record, 45, 0)] as const;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const ways: Placed[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      // A point p of the block lands at `at` + turn (spacing step + scale (p - base)).
      const dx = column * spacing[0] - scale[0] * base[0];
      const dy = row * spacing[1] - scale[1] * base[1];
      const way = placedWithin(plane, [
        scale[0] * cos,
        scale[0] * sin,
        -scale[1] * sin,
        scale[1] * cos,
        at[0] + dx * cos - dy * sin,
        at[1] + dx * sin + dy * cos,
      ]);
      if (!way.every(Number.isFinite)) return null;
      ways.push(way);
    }
  return ways;
}
