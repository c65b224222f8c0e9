import { type Box, boxesMeet, boxHolds, boxOf, joinedBox } from '../plane/box.ts';
import { length2 } from '../plane/distance.ts';
import { enters, type Obstacle } from '../plane/obstacle.ts';
import type { Point2 } from '../site/site.ts';
import { growSpider, lastCorner, type Spider, wayTo } from './spider.ts';

/** A taut cord in the plan. */
export interface Cord {
  readonly length: number;
  /** From the retractor, round the corners it bears on, to the target; a point met twice in a row stands once. */
  readonly path: readonly Point2[];
}

export interface Cords {
  /** One for each target; null where no way leads there. */
  readonly cords: readonly (Cord | null)[];
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
export function cordsTo(from: Point2, targets: readonly Point2[], near: (box: Box) => readonly Obstacle[]): Cords {
  let seen = boxOf([from, ...targets]);
  let around = near(seen);
  const met: Obstacle[] = [];
  // Straight ones lie in the box of their ends.
  const first = targets.map((target) => straight(from, target));
  for (const o of around) if (isCrossed(o, first)) met.push(o);
  if (met.length === 0) return { cords: first, seen };
  for (;;) {
    const spider = growSpider(from, met);
    const cords: (Cord | null)[] = [];
    let laid = seen;
    for (const target of targets) {
      const cord = cordAmong(spider, target);
      if (cord !== null) laid = joinedBox(laid, boxOf(cord.path));
      cords.push(cord);
    }
    if (!boxHolds(seen, laid)) {
      seen = laid;
      around = near(seen);
    }
    const known = met.length;
    for (const o of around) if (!met.includes(o) && isCrossed(o, cords)) met.push(o);
    if (met.length === known) return { cords, seen };
  }
}

const straight = (from: Point2, target: Point2): Cord => ({
  length: length2(target[0] - from[0], target[1] - from[1]),
  path: from[0] === target[0] && from[1] === target[1] ? [from] : [from, target],
});

function cordAmong(spider: Spider, target: Point2): Cord | null {
  const last = lastCorner(spider, target[0], target[1]);
  return last && { length: last.length, path: joined(wayTo(spider, last.node), target) };
}

function isCrossed(o: Obstacle, cords: readonly (Cord | null)[]): boolean {
  for (const cord of cords) if (cord !== null && crosses(cord.path, o)) return true;
  return false;
}

function crosses(path: readonly Point2[], o: Obstacle): boolean {
  if (path.length === 1) return enters(o, path[0]![0], path[0]![1], path[0]![0], path[0]![1]);
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    if (enters(o, a[0], a[1], b[0], b[1])) return true;
  }
  return false;
}

function joined(way: readonly Point2[], target: Point2): Point2[] {
  const path: Point2[] = [];
  for (let i = 0; i <= way.length; i++) {
    const point = i < way.length ? way[i]! : target;
    const last = path[path.length - 1];
    if (!last || last[0] !== point[0] || last[1] !== point[1]) path.push(point);
  }
  return path;
}

/** A `near` for a few obstacles without an index. */
export const nearAmong =
  (obstacles: readonly Obstacle[]) =>
  (box: Box): readonly Obstacle[] =>
    obstacles.filter((o) => boxesMeet(o, box));
