import { hypot2 } from '../plane/hypot.ts';
import { GRAZE, type Obstacle } from '../plane/obstacle.ts';
import type { Point2 } from '../site/site.ts';

/** What is seen from a corner, or from the retractor, within a distance and between two directions. */
export interface Sight {
  readonly from: Point2;
  /** Feet. */
  readonly radius: number;
  /** Radians, `start` < `end`, counter-clockwise; a whole turn apart for all round. */
  readonly start: number;
  readonly end: number;
}

/**
 * The part of a sector of a disc that is seen from its middle past convex obstacles, as a polygon, counter-clockwise.
 * Straight sides are exact; arcs are flattened from within, no more than `tolerance` feet off. Empty where nothing is
 * seen.
 *
 * Between two neighbouring directions to a corner, to a crossing of two outlines or to where an outline leaves the disc,
 * the view ends at one side of one obstacle or at the arc; a look along the middle tells which.
 */
export function seenSector(look: Sight, obstacles: readonly Obstacle[], tolerance: number): Point2[] {
  const { from, radius, start, end } = look;
  const near = obstacles.filter((o) => distanceToBox(o, from) < radius);
  const turns = turnsOf(look, near);
  const whole = end - start >= 2 * Math.PI - 1e-12;
  const points: Point2[] = whole ? [] : [from];
  for (let i = 1; i < turns.length; i++) {
    const a = turns[i - 1]!;
    const b = turns[i]!;
    if (b - a < 1e-12) continue;
    const side = firstSide(from, (a + b) / 2, radius, near);
    if (!side) {
      addArc(points, from, radius, a, b, tolerance);
      continue;
    }
    add(points, onSide(from, a, side, radius));
    add(points, onSide(from, b, side, radius));
  }
  const last = points.at(-1);
  const first = points[0];
  if (first && last && points.length > 1 && samePoint(first, last)) points.pop();
  return points.length > 2 ? points : [];
}

/** Side i of an obstacle, as its outward normal and a point on it. */
interface Side {
  readonly nx: number;
  readonly ny: number;
  readonly x: number;
  readonly y: number;
}

/** The side that a look meets first; null where it meets none within the radius. */
function firstSide(from: Point2, angle: number, radius: number, obstacles: readonly Obstacle[]): Side | null {
  const dx = Math.cos(angle);
  const dy = Math.sin(angle);
  let best = radius;
  let side: Side | null = null;
  for (const o of obstacles) {
    let enter = 0;
    let leave = best;
    let at = -1;
    for (let i = 0; i < o.count && enter < leave; i++) {
      const away = o.nx[i]! * (from[0] - o.xs[i]!) + o.ny[i]! * (from[1] - o.ys[i]!) + GRAZE;
      const rate = o.nx[i]! * dx + o.ny[i]! * dy;
      if (away >= 0) {
        if (rate >= 0) leave = -1;
        else if (-away / rate >= enter) {
          enter = -away / rate;
          at = i;
        }
      } else if (rate > 0) leave = Math.min(leave, -away / rate);
    }
    if (enter >= leave || at < 0) continue;
    best = enter;
    side = { nx: o.nx[at]!, ny: o.ny[at]!, x: o.xs[at]!, y: o.ys[at]! };
  }
  return side;
}

function onSide(from: Point2, angle: number, side: Side, radius: number): Point2 {
  const dx = Math.cos(angle);
  const dy = Math.sin(angle);
  const away = side.nx * (from[0] - side.x) + side.ny * (from[1] - side.y);
  const rate = side.nx * dx + side.ny * dy;
  const t = rate < 0 ? Math.min(radius, Math.max(0, -away / rate)) : away <= GRAZE ? 0 : radius;
  return [from[0] + t * dx, from[1] + t * dy];
}

/** The directions at which the view can change, ascending, the two ends included. */
function turnsOf({ from, radius, start, end }: Sight, near: readonly Obstacle[]): number[] {
  const turns = [start, end];
  const turnTo = (x: number, y: number): void => {
    const angle = Math.atan2(y - from[1], x - from[0]);
    for (let turn = angle - 2 * Math.PI; turn < end; turn += 2 * Math.PI) if (turn > start) turns.push(turn);
  };
  for (const o of near) {
    for (let i = 0; i < o.count; i++) {
      const j = (i + 1) % o.count;
      turnTo(o.xs[i]!, o.ys[i]!);
      for (const t of circleCuts(from, radius, o.xs[i]!, o.ys[i]!, o.xs[j]!, o.ys[j]!))
        turnTo(o.xs[i]! + t * (o.xs[j]! - o.xs[i]!), o.ys[i]! + t * (o.ys[j]! - o.ys[i]!));
    }
  }
  for (let k = 0; k < near.length; k++)
    for (let m = k + 1; m < near.length; m++) for (const [x, y] of outlineCrossings(near[k]!, near[m]!)) turnTo(x, y);
  return turns.sort((a, b) => a - b);
}

/** Where a segment crosses a circle, as fractions of the segment. */
function circleCuts(centre: Point2, radius: number, ax: number, ay: number, bx: number, by: number): number[] {
  const dx = bx - ax;
  const dy = by - ay;
  const fx = ax - centre[0];
  const fy = ay - centre[1];
  const a = dx * dx + dy * dy;
  const b = fx * dx + fy * dy;
  const square = b * b - a * (fx * fx + fy * fy - radius * radius);
  if (a === 0 || square <= 0) return [];
  const root = Math.sqrt(square);
  return [(-b - root) / a, (-b + root) / a].filter((t) => t > 0 && t < 1);
}

function outlineCrossings(p: Obstacle, q: Obstacle): Point2[] {
  if (p.minX > q.maxX || q.minX > p.maxX || p.minY > q.maxY || q.minY > p.maxY) return [];
  const crossings: Point2[] = [];
  for (let i = 0; i < p.count; i++) {
    const i2 = (i + 1) % p.count;
    const rx = p.xs[i2]! - p.xs[i]!;
    const ry = p.ys[i2]! - p.ys[i]!;
    for (let j = 0; j < q.count; j++) {
      const j2 = (j + 1) % q.count;
      const sx = q.xs[j2]! - q.xs[j]!;
      const sy = q.ys[j2]! - q.ys[j]!;
      const cross = rx * sy - ry * sx;
      if (cross === 0) continue;
      const ox = q.xs[j]! - p.xs[i]!;
      const oy = q.ys[j]! - p.ys[i]!;
      const t = (ox * sy - oy * sx) / cross;
      const u = (ox * ry - oy * rx) / cross;
      if (t >= 0 && t <= 1 && u >= 0 && u <= 1) crossings.push([p.xs[i]! + t * rx, p.ys[i]! + t * ry]);
    }
  }
  return crossings;
}

function addArc(points: Point2[], [x, y]: Point2, radius: number, a: number, b: number, tolerance: number): void {
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  const count = Math.max(1, Math.ceil((b - a) / step));
  for (let i = 0; i <= count; i++) {
    const angle = a + ((b - a) * i) / count;
    add(points, [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]);
  }
}

function add(points: Point2[], point: Point2): void {
  const last = points.at(-1);
  if (!last || !samePoint(last, point)) points.push(point);
}

const samePoint = (a: Point2, b: Point2): boolean => Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9;

function distanceToBox(o: Obstacle, [x, y]: Point2): number {
  return hypot2(Math.max(o.minX - x, 0, x - o.maxX), Math.max(o.minY - y, 0, y - o.maxY));
}
