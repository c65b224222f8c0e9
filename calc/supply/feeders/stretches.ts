import { between, distance } from '../../../routing/plane/space.ts';
import type { Point3, Pullpoint } from '../../../routing/site/site.ts';

/** A part of a path between two places where it can be opened. */
export interface Stretch {
  readonly path: readonly Point3[];
  /** Pull point that it begins at, and ends at; null at an end of the path. */
  readonly from: string | null;
  readonly to: string | null;
}

/** Cuts a path at the pull points that lie within `tolerance`, ft, of it, each once, where it is nearest. */
export function stretchesOf(
  path: readonly Point3[],
  pullpoints: readonly Pullpoint[],
  tolerance: number,
): readonly Stretch[] {
  const cuts = pullpoints
    .flatMap(({ id, at }) => {
      const nearest = nearestOn(path, at);
      return nearest === null || nearest.off > tolerance ? [] : [{ id, ...nearest }];
    })
    .sort((a, b) => a.leg - b.leg || a.share - b.share);
  const stretches: Stretch[] = [];
  let from: string | null = null;
  let points: Point3[] = [path[0]!];
  let leg = 0;
  for (const cut of cuts) {
    for (; leg < cut.leg; leg++) points.push(path[leg + 1]!);
    points.push(cut.point);
    if (pathLength(points) > tolerance) {
      stretches.push({ path: points, from, to: cut.id });
      from = cut.id;
      points = [cut.point];
    } else points.pop();
  }
  for (; leg + 1 < path.length; leg++) points.push(path[leg + 1]!);
  stretches.push({ path: points, from, to: null });
  return stretches;
}

/** Feet along a path. */
export const pathLength = (path: readonly Point3[]): number =>
  path.slice(1).reduce((sum, to, i) => sum + distance(path[i]!, to), 0);

interface OnPath {
  readonly leg: number;
  readonly share: number;
  readonly point: Point3;
  readonly off: number;
}

function nearestOn(path: readonly Point3[], at: Point3): OnPath | null {
  let nearest: OnPath | null = null;
  for (let leg = 0; leg + 1 < path.length; leg++) {
    const [a, b] = [path[leg]!, path[leg + 1]!];
    const length = distance(a, b);
    if (length === 0) continue;
    const along =
      ((at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1]) + (at[2] - a[2]) * (b[2] - a[2])) / length ** 2;
    const share = Math.min(1, Math.max(0, along));
    const point = between(a, b, share);
    const off = distance(point, at);
    if (nearest === null || off < nearest.off) nearest = { leg, share, point, off };
  }
  return nearest;
}
