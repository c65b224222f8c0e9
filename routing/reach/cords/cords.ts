import { type Box, boxesMeet, boxHolds } from '../../plane/box.ts';
import { length2 } from '../../plane/distance.ts';
import { enters, type Obstacle } from '../../plane/obstacle.ts';
import type { Point2, Point3 } from '../../site/site.ts';
import { growSpider, lastCorner, type Spider, wayTo } from './spider.ts';

/** A taut cord in the plan. */
export interface Cord {
  readonly length: number;
  /** From the retractor, round the corners it bears on, to the target; a point met twice in a row stands once. */
  readonly path: readonly Point2[];
}

/** Taut cords from one point to several targets; the path of one is put together when it is asked for (`cordTo`). */
export interface Cords {
  readonly from: Point2;
  readonly targets: readonly (Point2 | Point3)[];
  /** Feet to each target; infinite where no way leads there. */
  readonly lengths: readonly number[];
  /** The corners they go round; null where all are straight. */
  readonly spider: Spider | null;
  /** What lies wholly outside this box had no say in the result. */
  readonly seen: Box;
}

/**
 * The taut cords from one point to several targets among obstacles that `near` finds by box.
 *
 * Starts from no obstacle at all and takes in only those that the cords found so far would enter, until none does.
 * Leaving obstacles out can only shorten a shortest way, so a way that is shortest among some and clear of all is
 * shortest among all: the lengths are exact, and most cords meet one or two vehicles of the thousands on a lot.
 */
export function cordsTo(
  from: Point2,
  targets: readonly (Point2 | Point3)[],
  near: (box: Box) => readonly Obstacle[],
): Cords {
  let seen = boxRound(from, targets);
  let around = near(seen);
  const met: Obstacle[] = [];
  // Straight ones lie in the box of their ends.
  for (const o of around) if (entersAny(o, from, targets)) met.push(o);
  const lengths = new Array<number>(targets.length);
  if (met.length === 0) {
    for (let i = 0; i < targets.length; i++) lengths[i] = length2(targets[i]![0] - from[0], targets[i]![1] - from[1]);
    return { from, targets, lengths, spider: null, seen };
  }
  const last = new Array<number>(targets.length);
  for (;;) {
    const spider = growSpider(from, met);
    for (let i = 0; i < targets.length; i++) {
      const [x, y] = targets[i]!;
      const node = lastCorner(spider, x, y);
      last[i] = node;
      lengths[i] = node < 0 ? Number.POSITIVE_INFINITY : lengthFrom(spider, node, x, y);
    }
    const laid = boxLaid(seen, spider, last);
    if (!boxHolds(seen, laid)) {
      seen = laid;
      around = near(seen);
    }
    const known = met.length;
    for (const o of around) if (!met.includes(o) && isCrossed(o, spider, last, targets)) met.push(o);
    if (met.length === known) return { from, targets, lengths, spider, seen };
  }
}

/** The cord to one of the targets; null where no way leads there. */
export function cordTo({ from, targets, lengths, spider }: Cords, place: number): Cord | null {
  const length = lengths[place]!;
  if (length === Number.POSITIVE_INFINITY) return null;
  const [x, y] = targets[place]!;
  if (spider !== null) return { length, path: joined(wayTo(spider, lastCorner(spider, x, y)), [x, y]) };
  return { length, path: from[0] === x && from[1] === y ? [from] : [from, [x, y]] };
}

const lengthFrom = ({ reach, xs, ys }: Spider, node: number, x: number, y: number): number =>
  reach[node]! + length2(x - xs[node]!, y - ys[node]!);

function boxRound([x, y]: Point2, targets: readonly (Point2 | Point3)[]): Box {
  let [minX, minY, maxX, maxY] = [x, y, x, y];
  for (let i = 0; i < targets.length; i++) {
    const target = targets[i]!;
    minX = Math.min(minX, target[0]);
    maxX = Math.max(maxX, target[0]);
    minY = Math.min(minY, target[1]);
    maxY = Math.max(maxY, target[1]);
  }
  return { minX, minY, maxX, maxY };
}

/** A box with the corners that some cords pass. */
function boxLaid({ minX, minY, maxX, maxY }: Box, { xs, ys, before }: Spider, last: readonly number[]): Box {
  let [left, low, right, high] = [minX, minY, maxX, maxY];
  for (let i = 0; i < last.length; i++) {
    for (let node = last[i]!; node >= 0; node = before[node]!) {
      left = Math.min(left, xs[node]!);
      right = Math.max(right, xs[node]!);
      low = Math.min(low, ys[node]!);
      high = Math.max(high, ys[node]!);
    }
  }
  return { minX: left, minY: low, maxX: right, maxY: high };
}

/** A straight cord to one of the targets would enter an obstacle. */
function entersAny(o: Obstacle, [x, y]: Point2, targets: readonly (Point2 | Point3)[]): boolean {
  for (let i = 0; i < targets.length; i++) if (enters(o, x, y, targets[i]![0], targets[i]![1])) return true;
  return false;
}

function isCrossed(
  o: Obstacle,
  spider: Spider,
  last: readonly number[],
  targets: readonly (Point2 | Point3)[],
): boolean {
  for (let i = 0; i < last.length; i++)
    if (last[i]! >= 0 && crosses(o, spider, last[i]!, targets[i]![0], targets[i]![1])) return true;
  return false;
}

/** The cord that comes to a target from a corner enters an obstacle. */
function crosses(o: Obstacle, { xs, ys, before }: Spider, last: number, x: number, y: number): boolean {
  let [bx, by] = [x, y];
  let isPoint = true;
  for (let node = last; node >= 0; node = before[node]!) {
    const ax = xs[node]!;
    const ay = ys[node]!;
    if (ax === bx && ay === by) continue;
    if (enters(o, ax, ay, bx, by)) return true;
    isPoint = false;
    bx = ax;
    by = ay;
  }
  return isPoint && enters(o, x, y, x, y);
}

function joined(way: readonly Point2[], target: Point2): Point2[] {
  const path: Point2[] = [];
  for (let i = 0; i <= way.length; i++) {
    const point = i < way.length ? way[i]! : target;
    const last = path[path.length - 1];
    if (!last || last[0] !== point[0] || last[1] !== point[1]) path.push(point);
  }
  // A list of the length that it has: thousands of them stay.
  return path.slice();
}

/** A `near` for a few obstacles without an index. */
export const nearAmong =
  (obstacles: readonly Obstacle[]) =>
  (box: Box): readonly Obstacle[] =>
    obstacles.filter((o) => boxesMeet(o, box));
