import type { Point2 } from '../site.ts';

/** Chords turn by no more than this, radians: a circle of 48 chords lies within 0.2 percent of its radius. */
const TURN = (2 * Math.PI) / 48;

/** Points along an ellipse's arc, its ends included; axes as vectors, angles in radians, counter-clockwise from a. */
export function alongEllipse(centre: Point2, a: Point2, b: Point2, from: number, sweep: number): Point2[] {
  const chords = Math.max(1, Math.ceil(Math.abs(sweep) / TURN - 1e-9));
  const points: Point2[] = [];
  for (let i = 0; i <= chords; i++) {
    const at = from + (sweep * i) / chords;
    const cos = Math.cos(at);
    const sin = Math.sin(at);
    points.push([centre[0] + a[0] * cos + b[0] * sin, centre[1] + a[1] * cos + b[1] * sin]);
  }
  return points;
}

/** How many points `alongBulge` puts between two vertices. */
export const pointsAlongBulge = (bulge: number): number =>
  Math.abs(bulge) < 1e-9 ? 0 : Math.max(1, Math.ceil(Math.abs(4 * Math.atan(bulge)) / TURN - 1e-9)) - 1;

/** Points between two vertices of a polyline that are joined by an arc, both left out; bulge = tan(angle / 4). */
export function alongBulge(from: Point2, to: Point2, bulge: number): Point2[] {
  if (Math.abs(bulge) < 1e-9) return [];
  const sweep = 4 * Math.atan(bulge);
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  // From the middle of the chord to the centre, square to the chord.
  const k = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point2 = [(from[0] + to[0]) / 2 - dy * k, (from[1] + to[1]) / 2 + dx * k];
  const a: Point2 = [from[0] - centre[0], from[1] - centre[1]];
  return alongEllipse(centre, a, [-a[1], a[0]], 0, sweep).slice(1, -1);
}

/**
 * Points along a spline by de Boor's rule, weights where it has them; null where its knots do not fit its points.
 * Sixteen chords to each span.
 */
export function alongSpline(
  degree: number,
  knots: readonly number[],
  control: readonly Point2[],
  weights: readonly number[],
): Point2[] | null {
  const n = control.length;
  if (!(degree >= 1 && degree <= 10) || n <= degree || knots.length !== n + degree + 1) return null;
  if (knots.some((knot, i) => !Number.isFinite(knot) || (i > 0 && knot < knots[i - 1]!))) return null;
  const points: Point2[] = [];
  for (let span = degree; span < n; span++) {
    const start = knots[span]!;
    const end = knots[span + 1]!;
    if (!(end > start)) continue;
    for (let i = points.length === 0 ? 0 : 1; i <= 16; i++) {
      const point = onSpline(degree, knots, control, weights, span, start + ((end - start) * i) / 16);
      if (!point) return null;
      points.push(point);
    }
  }
  return points.length > 1 ? points : null;
}

function onSpline(
  degree: number,
  knots: readonly number[],
  control: readonly Point2[],
  weights: readonly number[],
  span: number,
  t: number,
): Point2 | null {
  const d: [number, number, number][] = [];
  for (let j = 0; j <= degree; j++) {
    const i = j + span - degree;
    const w = weights[i] ?? 1;
    d.push([control[i]![0] * w, control[i]![1] * w, w]);
  }
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const low = knots[j + span - degree]!;
      const high = knots[j + 1 + span - r]!;
      const s = high > low ? (t - low) / (high - low) : 0;
      const a = d[j - 1]!;
      const b = d[j]!;
      d[j] = [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s, a[2] + (b[2] - a[2]) * s];
    }
  const [x, y, w] = d[degree]!;
  return w > 0 ? [x / w, y / w] : null;
}
