import { boxesMeet, boxOf, widened } from '../../plane/box.ts';
import { distance, inPlan } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';

const ON = 1e-4;

/** A straight of a lattice. */
type Straight = readonly [a: Point3, b: Point3, ...rest: readonly unknown[]];

/** Which of some paths go along each of some straights, by their places in the list. */
export function pathsAlong(
  edges: readonly Straight[],
  paths: readonly (readonly Point3[])[],
): readonly (readonly number[])[] {
  const boxes = paths.map((path) => widened(boxOf(path.map(inPlan)), ON));
  return edges.map(([a, b]) => {
    const middle: Point3 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
    const own = { minX: middle[0], minY: middle[1], maxX: middle[0], maxY: middle[1] };
    return paths.flatMap((path, i) =>
      boxesMeet(boxes[i]!, own) && path.some((to, k) => k > 0 && isOn(middle, path[k - 1]!, to)) ? [i] : [],
    );
  });
}

/** The straights that do not lie on paths that are there already. */
export function besideStanding<Edge extends readonly [a: Point3, b: Point3, ...rest: readonly unknown[]]>(
  edges: readonly Edge[],
  paths: readonly (readonly Point3[])[],
): readonly Edge[] {
  if (edges.length === 0) return edges;
  const reach = widened(boxOf(edges.flatMap(([a, b]) => [a, b].map(inPlan))), ON);
  const near = paths.flatMap((path) =>
    path.slice(1).flatMap((to, i): (readonly [Point3, Point3])[] => {
      const from = path[i]!;
      return boxesMeet(reach, boxOf([from, to].map(inPlan))) ? [[from, to]] : [];
    }),
  );
  return edges.filter(([a, b]) => !near.some(([from, to]) => isOn(a, from, to) && isOn(b, from, to)));
}

const isOn = (at: Point3, from: Point3, to: Point3): boolean =>
  distance(from, at) + distance(at, to) - distance(from, to) < ON;
