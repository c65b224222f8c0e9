import { boxesMeet, boxOf, widened } from '../../plane/box.ts';
import { between, distance, inPlan } from '../../plane/space.ts';
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

/** What of some straights does not lie on paths that are there already: whole, in parts, or none of one. */
export function besideStanding<Edge extends Straight>(
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
  return edges.flatMap((edge) => {
    const [a, b, ...rest] = edge;
    const shares = near.flatMap((one) => sharedPart(a, b, one));
    if (shares.length === 0) return [edge];
    return leftOf(shares, ON / distance(a, b)).map(
      ([s, t]) => [s === 0 ? a : between(a, b, s), t === 1 ? b : between(a, b, t), ...rest] as unknown as Edge,
    );
  });
}

/** What of some straights does not lie on others. */
export const besideLaid = <Edge extends Straight>(edges: readonly Edge[], laid: readonly Edge[]): readonly Edge[] =>
  besideStanding(
    edges,
    laid.map(([a, b]) => [a, b]),
  );

/** From where to where, as shares of a straight, another one lies on it; none where they only touch. */
function sharedPart(a: Point3, b: Point3, [from, to]: readonly [Point3, Point3]): (readonly [number, number])[] {
  const length = distance(a, b);
  if (length < ON || distance(from, to) < ON) return [];
  const shareOf = (at: Point3): number =>
    [0, 1, 2].reduce((sum, k) => sum + (at[k]! - a[k]!) * (b[k]! - a[k]!), 0) / length ** 2;
  const [s, t] = [shareOf(from), shareOf(to)].sort((p, q) => p - q) as [number, number];
  const [first, last] = [Math.max(0, s), Math.min(1, t)];
  if ((last - first) * length < ON) return [];
  return [first, last].every((share) => isOn(between(a, b, share), from, to)) ? [[first, last]] : [];
}

/** What is left of 0 to 1 between some parts of it, but what is shorter than `least`. */
function leftOf(parts: readonly (readonly [number, number])[], least: number): (readonly [number, number])[] {
  const left: [number, number][] = [];
  let at = 0;
  for (const [s, t] of [...parts].sort((p, q) => p[0] - q[0])) {
    if (s - at > least) left.push([at, s]);
    at = Math.max(at, t);
  }
  if (1 - at > least) left.push([at, 1]);
  return left;
}

const isOn = (at: Point3, from: Point3, to: Point3): boolean =>
  distance(from, at) + distance(at, to) - distance(from, to) < ON;
