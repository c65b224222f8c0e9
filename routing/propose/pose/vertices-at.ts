import { between, distance } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';

/** So near to a line, feet, a place is on it. */
const ON = 1e-5;

/**
 * A path with a vertex at each of some places that it goes through, so that they are on it still once all are turned and
 * rounded.
 */
export const verticesAt = (path: readonly Point3[], places: readonly Point3[]): readonly Point3[] =>
  path.flatMap((to, i) => {
    if (i === 0) return [to];
    const from = path[i - 1]!;
    const whole = distance(from, to);
    const on = places.flatMap((at) => {
      const along = distance(from, at);
      if (along < ON || distance(at, to) < ON || along > whole) return [];
      return distance(between(from, to, along / whole), at) < ON ? [{ at, along }] : [];
    });
    const sorted = on.sort((a, b) => a.along - b.along).map(({ at }) => at);
    return [...sorted.filter((at, k) => k === 0 || distance(at, sorted[k - 1]!) > ON), to];
  });
