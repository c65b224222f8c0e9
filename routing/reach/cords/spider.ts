import { length2 } from '../../plane/distance.ts';
import { enters, GRAZE, type Obstacle } from '../../plane/obstacle.ts';
import type { Point2 } from '../../site/site.ts';

/** Shortest taut ways from one point to the corners around it. Node 0 is the point itself. */
export interface Spider {
  readonly count: number;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Plan length from the start; Infinity where there is no way, or only one longer than the limit. */
  readonly reach: readonly number[];
  /** The node before on the way; -1 at the start and where there is no way. */
  readonly before: readonly number[];
  readonly obstacles: readonly Obstacle[];
  /** Which obstacle a node is a corner of, and which corner; -1 at the start. */
  readonly owner: readonly number[];
  readonly corner: readonly number[];
}

/** One that still grows. Lists, for a typed array of more than eight numbers costs more to make than a cord takes. */
interface Growing extends Spider {
  readonly reach: number[];
  readonly before: number[];
}

// Two ways that differ by less are equal; the one found first, with fewer corners, stands.
const TIE = 1e-12;

/**
 * The shortest ways from a point to every corner of some obstacles that a taut cord can bend at: Dijkstra over their
 * visibility graph, whose edges are tested only when they would shorten a way. A shortest way among polygons bends only
 * at their convex corners (Lozano-Perez and Wesley 1979), also where the polygons overlap. A corner that is met head-on
 * only, with its obstacle to both sides of the cord, is none that a cord bends at and has no way.
 */
export function growSpider(from: Point2, all: readonly Obstacle[], limit = Number.POSITIVE_INFINITY): Spider {
  const obstacles = distinct(all);
  const spider = nodesOf(from, obstacles);
  const { count, xs, ys, reach, before } = spider;
  const settled = new Array<boolean>(count).fill(false);
  for (;;) {
    let here = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      if (!settled[i] && reach[i]! < least) {
        here = i;
        least = reach[i]!;
      }
    }
    if (here < 0) return spider;
    settled[here] = true;
    const x = xs[here]!;
    const y = ys[here]!;
    for (let i = 1; i < count; i++) {
      if (settled[i]) continue;
      const dx = xs[i]! - x;
      const dy = ys[i]! - y;
      const length = least + length2(dx, dy);
      if (length > limit || !(length < reach[i]! - TIE)) continue;
      if (headOn(spider, i, dx, dy) || headOn(spider, here, dx, dy)) continue;
      if (blocked(obstacles, x, y, xs[i]!, ys[i]!)) continue;
      reach[i] = length;
      before[i] = here;
    }
  }
}

/** More obstacles than so many stand about no cord, unless some are copies that lie on one another. */
const MANY = 24;

/** Of obstacles in one and the same place, one: round a heap of copies a cord goes as round the first. */
function distinct(obstacles: readonly Obstacle[]): readonly Obstacle[] {
  if (obstacles.length <= MANY) return obstacles;
  return [...new Map(obstacles.map((one) => [`${one.xs.join()} ${one.ys.join()}`, one])).values()];
}

function nodesOf(from: Point2, obstacles: readonly Obstacle[]): Growing {
  let count = 1;
  for (const o of obstacles) for (let i = 0; i < o.count; i++) count += o.bends[i]!;
  const xs = new Array<number>(count);
  const ys = new Array<number>(count);
  const owner = new Array<number>(count);
  const corner = new Array<number>(count);
  const reach = new Array<number>(count).fill(Number.POSITIVE_INFINITY);
  owner[0] = -1;
  corner[0] = -1;
  xs[0] = from[0];
  ys[0] = from[1];
  reach[0] = 0;
  let next = 1;
  for (let k = 0; k < obstacles.length; k++) {
    const o = obstacles[k]!;
    for (let i = 0; i < o.count; i++) {
      if (o.bends[i] === 0) continue;
      xs[next] = o.xs[i]!;
      ys[next] = o.ys[i]!;
      owner[next] = k;
      corner[next] = i;
      next++;
    }
  }
  return { count, xs, ys, reach, before: new Array<number>(count).fill(-1), obstacles, owner, corner };
}

/**
 * The line through a corner in a direction has the corner's obstacle to both sides, ahead of it or behind: no taut cord
 * lies on it, as it could be drawn shorter past the corner to one side.
 */
function headOn({ obstacles, owner, corner }: Spider, node: number, dx: number, dy: number): boolean {
  if (node === 0) return false;
  const o = obstacles[owner[node]!]!;
  const i = corner[node]!;
  const j = i === 0 ? o.count - 1 : i - 1;
  const a = o.nx[j]! * dx + o.ny[j]! * dy;
  const b = o.nx[i]! * dx + o.ny[i]! * dy;
  return (a > GRAZE && b > GRAZE) || (a < -GRAZE && b < -GRAZE);
}

/** A cord laid straight from a to b would enter one of the obstacles. */
export function blocked(obstacles: readonly Obstacle[], ax: number, ay: number, bx: number, by: number): boolean {
  for (const o of obstacles) if (enters(o, ax, ay, bx, by)) return true;
  return false;
}

/** The node at which the shortest way to a point leaves the corners; -1 where there is none. */
export function lastCorner(spider: Spider, x: number, y: number): number {
  let node = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < spider.count; i++) {
    const soFar = spider.reach[i]!;
    if (!(soFar < least)) continue;
    const length = soFar + length2(x - spider.xs[i]!, y - spider.ys[i]!);
    if (!(length < least - TIE) || headOn(spider, i, x - spider.xs[i]!, y - spider.ys[i]!)) continue;
    if (blocked(spider.obstacles, spider.xs[i]!, spider.ys[i]!, x, y)) continue;
    node = i;
    least = length;
  }
  return node;
}

/** The corners passed from the start to a node, both included. */
export function wayTo(spider: Spider, node: number): Point2[] {
  const way: Point2[] = [];
  for (let i = node; i >= 0; i = spider.before[i]!) way.push([spider.xs[i]!, spider.ys[i]!]);
  return way.reverse();
}
