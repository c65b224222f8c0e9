import type { Point2 } from '../../site/site.ts';

/** A gap this wide across the rows, feet, parts one canopy or double row from the next. Common practice, no source. */
const GAP = 22;

/**
 * Points in groups of at most so many, each a stretch of one band of rows, cut along into even stretches. Points in the
 * frame of the lot; gives their places in the list.
 */
export function groupsAlong(points: readonly Point2[], most: number): number[][] {
  const [along, across] = axesOf(points);
  return bandsOf(points).flatMap((band) => {
    const sorted = band.sort(
      (a, b) => points[a]![along]! - points[b]![along]! || points[a]![across]! - points[b]![across]!,
    );
    const parts = Math.ceil(sorted.length / most);
    return Array.from({ length: parts }, (_, k) =>
      sorted.slice(Math.round((k * sorted.length) / parts), Math.round(((k + 1) * sorted.length) / parts)),
    );
  });
}

/** The axis along the rows, and the one across them. */
const axesOf = (points: readonly Point2[]): readonly [along: 0 | 1, across: 0 | 1] =>
  spread(points.map(([u]) => u)) >= spread(points.map(([, v]) => v)) ? [0, 1] : [1, 0];

/** Bands of rows, parted where nothing lies across for a while: places in the list of points. */
export function bandsOf(points: readonly Point2[]): number[][] {
  const [, across] = axesOf(points);
  const order = points.map((_, i) => i).sort((a, b) => points[a]![across]! - points[b]![across]!);
  const bands: number[][] = [];
  for (const i of order) {
    const band = bands.at(-1);
    const last = band?.at(-1);
    if (band && last !== undefined && points[i]![across]! - points[last]![across]! < GAP) band.push(i);
    else bands.push([i]);
  }
  return bands;
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
