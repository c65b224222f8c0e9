import type { Point2 } from '../../../site.ts';
import { alongBulge, alongEllipse, alongSpline } from '../../curves.ts';
import { BUDGET } from '../../imported.ts';
import { asNumber, type DxfRecord } from '../records.ts';
import type { Outline } from './outline.ts';

/** Walks the group codes of a record, in whose order a hatch says what its boundary is. */
interface Cursor {
  /** The next value under a code, from here on; NaN where there is none. */
  readonly next: (code: number) => number;
  /** The value under a code where it stands right here. */
  readonly here: (code: number) => number | null;
}

function cursorOf({ codes, values }: DxfRecord, from: number): Cursor {
  let at = from;
  return {
    next: (code) => {
      while (at < codes.length && codes[at] !== code) at++;
      return at < codes.length ? asNumber(values[at++]!) : Number.NaN;
    },
    here: (code) => (codes[at] === code ? asNumber(values[at++]!) : null),
  };
}

const RAD = Math.PI / 180;
const POLYLINE = 2;

/**
 * The boundaries of a hatch in its own coordinates, arcs as chords; null where it is damaged. Its pattern is not drawn.
 * Group codes by the open DXF reference, "boundary path data".
 */
export function hatchOutlines(record: DxfRecord, sagitta: number): readonly Outline[] | null {
  const start = record.codes.indexOf(91);
  if (start < 0) return null;
  const cursor = cursorOf(record, start);
  const count = cursor.next(91);
  if (!isCount(count)) return null;
  const outlines: Outline[] = [];
  for (let i = 0; i < count; i++) {
    const flags = cursor.next(92);
    if (!Number.isFinite(flags)) return null;
    const points = flags & POLYLINE ? polyline(cursor, sagitta) : edges(cursor, sagitta);
    if (!points) return null;
    if (points.length > 1) outlines.push({ points, closed: true });
  }
  return outlines;
}

const isCount = (count: number): boolean => Number.isInteger(count) && count >= 0 && count <= BUDGET.points;

const pair = (cursor: Cursor, code: number): Point2 => [cursor.next(code), cursor.next(code + 10)];

function polyline(cursor: Cursor, sagitta: number): Point2[] | null {
  cursor.next(72);
  cursor.next(73);
  const count = cursor.next(93);
  if (!isCount(count)) return null;
  const vertices: { readonly at: Point2; readonly bulge: number }[] = [];
  for (let i = 0; i < count; i++) {
    const at = pair(cursor, 10);
    if (!at.every(Number.isFinite)) return null;
    vertices.push({ at, bulge: cursor.here(42) ?? 0 });
  }
  const points: Point2[] = [];
  for (let i = 0; i < count && points.length <= BUDGET.points; i++) {
    const { at, bulge } = vertices[i]!;
    points.push(at, ...alongBulge(at, vertices[(i + 1) % count]!.at, bulge, sagitta));
  }
  return points;
}

function edges(cursor: Cursor, sagitta: number): Point2[] | null {
  const count = cursor.next(93);
  if (!isCount(count)) return null;
  const points: Point2[] = [];
  for (let i = 0; i < count && points.length <= BUDGET.points; i++) {
    const edge = edgeOf(cursor, sagitta);
    if (!edge?.every((at) => at.every(Number.isFinite))) return null;
    const last = points.at(-1);
    const [first] = edge;
    const meets = last && first && Math.hypot(last[0] - first[0], last[1] - first[1]) < 1e-9;
    points.push(...(meets ? edge.slice(1) : edge));
  }
  const [first, last] = [points[0], points.at(-1)];
  if (first && last && points.length > 2 && Math.hypot(last[0] - first[0], last[1] - first[1]) < 1e-9) points.pop();
  return points;
}

function edgeOf(cursor: Cursor, sagitta: number): Point2[] | null {
  switch (cursor.next(72)) {
    case 1:
      return [pair(cursor, 10), pair(cursor, 11)];
    case 2: {
      const centre = pair(cursor, 10);
      const radius = cursor.next(40);
      return arc(cursor, centre, [radius, 0], [0, radius], sagitta);
    }
    case 3: {
      const centre = pair(cursor, 10);
      const [ax, ay] = pair(cursor, 11);
      const ratio = cursor.next(40);
      return arc(cursor, centre, [ax, ay], [-ay * ratio, ax * ratio], sagitta);
    }
    case 4:
      return spline(cursor, sagitta);
    default:
      return null;
  }
}

/** Angles run clockwise where the edge says so. */
function arc(cursor: Cursor, centre: Point2, a: Point2, b: Point2, sagitta: number): Point2[] | null {
  const [from, to] = [cursor.next(50) * RAD, cursor.next(51) * RAD];
  const clockwise = cursor.next(73) === 0;
  if (![from, to, ...a, ...b].every(Number.isFinite)) return null;
  const turn = 2 * Math.PI;
  const swept = (((to - from) % turn) + turn) % turn || turn;
  return clockwise
    ? alongEllipse(centre, a, [-b[0], -b[1]], from, swept, sagitta)
    : alongEllipse(centre, a, b, from, swept, sagitta);
}

function spline(cursor: Cursor, sagitta: number): Point2[] | null {
  const degree = cursor.next(94);
  const rational = cursor.next(73) === 1;
  cursor.next(74);
  const [knotCount, controlCount] = [cursor.next(95), cursor.next(96)];
  if (!isCount(knotCount) || !isCount(controlCount)) return null;
  const knots: number[] = [];
  for (let i = 0; i < knotCount; i++) {
    const knot = cursor.next(40);
    if (!Number.isFinite(knot)) return null;
    knots.push(knot);
  }
  const control: Point2[] = [];
  const weights: number[] = [];
  for (let i = 0; i < controlCount; i++) {
    const at = pair(cursor, 10);
    if (!at.every(Number.isFinite)) return null;
    control.push(at);
    const weight = cursor.here(42);
    if (rational) weights.push(weight ?? 1);
  }
  return alongSpline(degree, knots, control, weights, sagitta);
}
