import { twiceAreaOf } from './area.ts';
import { type Box, boxOf } from './box.ts';
import { hypot2 } from './hypot.ts';
import type { Point2 } from './point.ts';

/**
 * How deep a cord may enter an obstacle and still count as touching its boundary, feet. An inlet lies on the outline of
 * its own vehicle and vehicles may stand side to side; turned to an angle, rounding leaves such points some 1e-11 ft to
 * either side, and without this the same lot, rotated, would have other lengths. A path that cuts a corner this deep
 * is shorter by the square of it, far below what a number can hold. Exact predicates (robust-predicates, which turf has) do
 * not take its place: of points put on an edge by arithmetic none lies exactly on it, and they would say on which side.
 */
export const GRAZE = 1e-9;

/** A simple polygon whose open interior a cord stays out of, with what the inner loops need ready. */
export interface Obstacle extends Box {
  readonly count: number;
  /** Corners, counter-clockwise. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Outward unit normal of the edge from corner i to the next. */
  readonly nx: readonly number[];
  readonly ny: readonly number[];
  readonly convex: boolean;
  /** 1 where the outline turns left: the only corners that a taut cord bends at. */
  readonly bends: readonly number[];
}

/**
 * The obstacle of a simple outline, given in either sense. Repeated points are dropped; an outline of no area is an
 * obstacle that nothing can enter. An outline that crosses itself is read by the even-odd rule; its crossings are not
 * corners, so a length around it can come out too long.
 */
export function obstacleOf(outline: readonly Point2[]): Obstacle {
  const once = withoutRepeats(outline);
  const points = twiceAreaOf(once) < 0 ? once.toReversed() : once;
  const n = points.length;
  // Lists of the length that they have: a lot holds tens of thousands of outlines, and one that grows takes room for more.
  const xs = new Array<number>(n);
  const ys = new Array<number>(n);
  const nx = new Array<number>(n);
  const ny = new Array<number>(n);
  const bends = new Array<number>(n);
  let convex = n > 2;
  for (let i = 0; i < n; i++) {
    xs[i] = points[i]![0];
    ys[i] = points[i]![1];
  }
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const dx = xs[j]! - xs[i]!;
    const dy = ys[j]! - ys[i]!;
    const length = hypot2(dx, dy) || 1;
    nx[i] = dy / length;
    ny[i] = -dx / length;
  }
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n;
    const turn = nx[before]! * ny[i]! - ny[before]! * nx[i]!;
    bends[i] = turn > 0 ? 1 : 0;
    if (turn < 0) convex = false;
  }
  const { minX, minY, maxX, maxY } = n === 0 ? AT_ORIGIN : boxOf(points);
  return { count: n, xs, ys, nx, ny, convex: convex && windsOnce(nx, ny), bends, minX, minY, maxX, maxY };
}

/** An outline without the points that repeat the one before: itself where there are none. */
function withoutRepeats(outline: readonly Point2[]): readonly Point2[] {
  const { length } = outline;
  if (length === 1) return outline;
  const repeats = (i: number): boolean => {
    const [p, before] = [outline[i]!, outline[i === 0 ? length - 1 : i - 1]!];
    return p[0] === before[0] && p[1] === before[1];
  };
  for (let i = 0; i < length; i++) if (repeats(i)) return outline.filter((_, k) => !repeats(k));
  return outline;
}

const AT_ORIGIN: Box = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

/** The part of the segment from a to b in the open interior has a length: it goes deeper than `GRAZE`. */
export function enters(o: Obstacle, ax: number, ay: number, bx: number, by: number): boolean {
  if (ax < o.minX && bx < o.minX) return false;
  if (ax > o.maxX && bx > o.maxX) return false;
  if (ay < o.minY && by < o.minY) return false;
  if (ay > o.maxY && by > o.maxY) return false;
  return o.convex ? entersConvex(o, ax, ay, bx, by) : entersAny(o, ax, ay, bx, by);
}

/** The point is inside, deeper than `GRAZE`: on the outline is outside. */
export function insideOf(o: Obstacle, x: number, y: number): boolean {
  if (x <= o.minX || x >= o.maxX || y <= o.minY || y >= o.maxY) return false;
  if (o.convex) {
    for (let i = 0; i < o.count; i++) if (o.nx[i]! * (x - o.xs[i]!) + o.ny[i]! * (y - o.ys[i]!) >= -GRAZE) return false;
    return true;
  }
  return oddCrossings(o, x, y) && outlineDistance(o, x, y) > GRAZE;
}

// Clips the segment to the polygon shrunk by GRAZE, edge by edge (Cyrus and Beck 1978).
function entersConvex(o: Obstacle, ax: number, ay: number, bx: number, by: number): boolean {
  const { count, xs, ys, nx, ny } = o;
  let from = 0;
  let to = 1;
  for (let i = 0; i < count; i++) {
    const a = nx[i]! * (ax - xs[i]!) + ny[i]! * (ay - ys[i]!) + GRAZE;
    const b = nx[i]! * (bx - xs[i]!) + ny[i]! * (by - ys[i]!) + GRAZE;
    if (a >= 0) {
      if (b >= 0) return false;
      const t = a / (a - b);
      if (t > from) from = t;
    } else if (b > 0) {
      const t = a / (a - b);
      if (t < to) to = t;
    }
    if (from >= to) return false;
  }
  return true;
}

function entersAny(o: Obstacle, ax: number, ay: number, bx: number, by: number): boolean {
  if (ax === bx && ay === by) return insideOf(o, ax, ay);
  return spansInside(o, ax, ay, bx, by).length > 0;
}

/**
 * The parts of the segment from a to b inside the polygon, as fractions of it, in order; a part along the outline is not
 * inside. Cuts the segment where it meets the outline and looks at the middle of each piece.
 */
export function spansInside(o: Obstacle, ax: number, ay: number, bx: number, by: number): [from: number, to: number][] {
  const dx = bx - ax;
  const dy = by - ay;
  const length = hypot2(dx, dy);
  if (length === 0) return [];
  const cuts = [0, 1];
  for (let i = 0; i < o.count; i++) {
    const j = (i + 1) % o.count;
    const side = ((o.xs[i]! - ax) * dy - (o.ys[i]! - ay) * dx) / length;
    const next = ((o.xs[j]! - ax) * dy - (o.ys[j]! - ay) * dx) / length;
    if (Math.abs(side) <= GRAZE) cuts.push(((o.xs[i]! - ax) * dx + (o.ys[i]! - ay) * dy) / (length * length));
    if (side < 0 === next < 0) continue;
    const t = side / (side - next);
    const x = o.xs[i]! + t * (o.xs[j]! - o.xs[i]!);
    const y = o.ys[i]! + t * (o.ys[j]! - o.ys[i]!);
    cuts.push(((x - ax) * dx + (y - ay) * dy) / (length * length));
  }
  cuts.sort((s, t) => s - t);
  const spans: [number, number][] = [];
  for (let i = 1; i < cuts.length; i++) {
    const from = Math.max(0, cuts[i - 1]!);
    const to = Math.min(1, cuts[i]!);
    if ((to - from) * length <= GRAZE) continue;
    const t = (from + to) / 2;
    if (!insideOf(o, ax + t * dx, ay + t * dy)) continue;
    const last = spans.at(-1);
    if (last && last[1] === from) last[1] = to;
    else spans.push([from, to]);
  }
  return spans;
}

function oddCrossings(o: Obstacle, x: number, y: number): boolean {
  let odd = false;
  for (let i = 0, j = o.count - 1; i < o.count; j = i++) {
    if (o.ys[i]! > y === o.ys[j]! > y) continue;
    const at = o.xs[i]! + ((y - o.ys[i]!) / (o.ys[j]! - o.ys[i]!)) * (o.xs[j]! - o.xs[i]!);
    if (x < at) odd = !odd;
  }
  return odd;
}

/** Distance from a point to the outline, from inside or outside. */
export function outlineDistance(o: Obstacle, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < o.count; i++) {
    const j = (i + 1) % o.count;
    const dx = o.xs[j]! - o.xs[i]!;
    const dy = o.ys[j]! - o.ys[i]!;
    const along = ((x - o.xs[i]!) * dx + (y - o.ys[i]!) * dy) / (dx * dx + dy * dy);
    const t = Math.min(1, Math.max(0, along));
    least = Math.min(least, hypot2(x - o.xs[i]! - t * dx, y - o.ys[i]! - t * dy));
  }
  return least;
}

// A pentagram turns left everywhere and is not convex: its normals go round twice, for which four corners are too few.
function windsOnce(nx: readonly number[], ny: readonly number[]): boolean {
  if (nx.length < 5) return true;
  let turned = 0;
  for (let i = 0; i < nx.length; i++) {
    const j = (i + 1) % nx.length;
    turned += Math.atan2(nx[i]! * ny[j]! - ny[i]! * nx[j]!, nx[i]! * nx[j]! + ny[i]! * ny[j]!);
  }
  return turned < 3 * Math.PI;
}
