import type { Point2 } from '../site.ts';
import { BUDGET } from './imported.ts';

/** Chords turn by no more than this, radians: a circle of 48 chords lies within 0.2 percent of its radius. */
const TURN = (2 * Math.PI) / 48;
/** No circle has more chords, however large: 0.01 ft off at a radius of 33,000 ft. */
const MOST_CHORDS = 4096;

/** How many chords keep an arc of a radius within a sagitta: r (1 - cos(angle / 2)) of each. */
function chordsFor(radius: number, sweep: number, sagitta: number): number {
  const turn = sagitta > 0 && radius > sagitta ? 2 * Math.acos(1 - sagitta / radius) : TURN;
  const each = Math.max((2 * Math.PI) / MOST_CHORDS, Math.min(TURN, turn));
  return Math.max(1, Math.ceil(Math.abs(sweep) / each - 1e-9));
}

/**
 * Points along an ellipse's arc, its ends included; axes as vectors, angles in radians, counter-clockwise from a. No
 * chord is farther off the arc than `sagitta`, in the units of the axes.
 */
export function alongEllipse(
  centre: Point2,
  a: Point2,
  b: Point2,
  from: number,
  sweep: number,
  sagitta: number,
): Point2[] {
  const chords = chordsFor(Math.max(Math.hypot(...a), Math.hypot(...b)), sweep, sagitta);
  const points: Point2[] = [];
  for (let i = 0; i <= chords; i++) {
    const at = from + (sweep * i) / chords;
    const cos = Math.cos(at);
    const sin = Math.sin(at);
    points.push([centre[0] + a[0] * cos + b[0] * sin, centre[1] + a[1] * cos + b[1] * sin]);
  }
  return points;
}

const radiusOf = (from: Point2, to: Point2, bulge: number): number =>
  (Math.hypot(to[0] - from[0], to[1] - from[1]) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));

/** How many points `alongBulge` puts between two vertices. */
export const pointsAlongBulge = (from: Point2, to: Point2, bulge: number, sagitta: number): number =>
  Math.abs(bulge) < 1e-9 ? 0 : chordsFor(radiusOf(from, to, bulge), 4 * Math.atan(bulge), sagitta) - 1;

/** Points between two vertices of a polyline that are joined by an arc, both left out; bulge = tan(angle / 4). */
export function alongBulge(from: Point2, to: Point2, bulge: number, sagitta: number): Point2[] {
  if (Math.abs(bulge) < 1e-9) return [];
  const sweep = 4 * Math.atan(bulge);
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  // From the middle of the chord to the centre, square to the chord.
  const k = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point2 = [(from[0] + to[0]) / 2 - dy * k, (from[1] + to[1]) / 2 + dx * k];
  const a: Point2 = [from[0] - centre[0], from[1] - centre[1]];
  return alongEllipse(centre, a, [-a[1], a[0]], 0, sweep, sagitta).slice(1, -1);
}

/**
 * Points along a spline by de Boor's rule, weights where it has them; null where its knots do not fit its points.
 * Sixteen chords to each span, more where they would be farther off it than `sagitta`.
 */
export function alongSpline(
  degree: number,
  knots: readonly number[],
  control: readonly Point2[],
  weights: readonly number[],
  sagitta: number,
): Point2[] | null {
  const n = control.length;
  if (!(degree >= 1 && degree <= 10) || n <= degree || knots.length !== n + degree + 1) return null;
  if (knots.some((knot, i) => !Number.isFinite(knot) || (i > 0 && knot < knots[i - 1]!))) return null;
  const points: Point2[] = [];
  for (let span = degree; span < n; span++) {
    const start = knots[span]!;
    const end = knots[span + 1]!;
    if (!(end > start)) continue;
    const at = (share: number): Point2 | null =>
      onSpline(degree, knots, control, weights, span, start + (end - start) * share);
    const own = spanOf(at, sagitta);
    if (!own) return null;
    points.push(...(points.length === 0 ? own : own.slice(1)));
    // The caller refuses the drawing then, so that the rest of it is not worked out.
    if (points.length > BUDGET.points) break;
  }
  return points.length > 1 ? points : null;
}

/** Points along one span, from its start to its end: the chords are halved until they lie near enough. */
function spanOf(at: (share: number) => Point2 | null, sagitta: number): Point2[] | null {
  let points: Point2[] = [];
  for (let chords = 16; chords <= 256; chords *= 2) {
    const next: Point2[] = [];
    let off = 0;
    for (let i = 0; i <= chords; i++) {
      const point = at(i / chords);
      if (!point) return null;
      next.push(point);
      const [a, b] = [points[(i - 1) / 2], points[(i + 1) / 2]];
      if (a && b) off = Math.max(off, Math.hypot((a[0] + b[0]) / 2 - point[0], (a[1] + b[1]) / 2 - point[1]));
    }
    if (chords > 16 && off <= sagitta) return points;
    points = next;
  }
  return points;
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
