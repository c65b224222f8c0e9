import type { Point2 } from '../../site/site.ts';
import type { Gaps } from './place-finder.ts';

/** A gap this wide across the rows, feet, parts one canopy or double row from the next. Common practice, no source. */
const GAP = 22;

/** The axis along the rows, and the one across them. */
const axesOf = (points: readonly Point2[]): readonly [along: 0 | 1, across: 0 | 1] =>
  spread(points.map(([u]) => u)) >= spread(points.map(([, v]) => v)) ? [0, 1] : [1, 0];

/** Bands of rows, parted where nothing lies across for a while: places in the list of points. */
function bandsOf(points: readonly Point2[], across: 0 | 1): number[][] {
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

/** Where nothing lies between the bands of some points: the middles of the gaps across. */
export function gapsOf(points: readonly Point2[]): Gaps {
  const [, across] = axesOf(points);
  const bands = bandsOf(points, across);
  return {
    along: across,
    at: bands.slice(1).map((band, i) => (points[bands[i]!.at(-1)!]![across]! + points[band[0]!]![across]!) / 2),
  };
}

/**
 * Orders in which points may be cut into stretches: band by band, each along and the next one back; and along all of the
 * bands at once. Points in the frame of the lot; gives their places in the list.
 */
export function ordersOf(points: readonly Point2[]): readonly (readonly number[])[] {
  const [along, across] = axesOf(points);
  const byPlace = (a: number, b: number): number =>
    points[a]![along]! - points[b]![along]! || points[a]![across]! - points[b]![across]!;
  const bands = bandsOf(points, across);
  const whole = bands.flat().sort(byPlace);
  if (bands.length === 1) return [whole];
  const bandwise = bands.flatMap((band, k) => {
    const sorted = [...band].sort(byPlace);
    return k % 2 === 0 ? sorted : sorted.reverse();
  });
  return [bandwise, whole];
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
