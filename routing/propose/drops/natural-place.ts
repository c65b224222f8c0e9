import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Point2, Stall } from '../../site/site.ts';
import type { LotFrame } from '../raceways/lattice/lot-frame.ts';
import type { HangingPlace } from './hanging-places.ts';

/** A foot of tap weighs as so many feet beside the natural place. Common practice, no source. */
const TAP = 2;
/** A tap that there is none of, feet. */
const NO_TAP = 12;

/**
 * Where one would hang a drop for some stalls with nothing in the way: over the middle of the stripe between two, over that
 * of the stripe on the same side of every stall where each has its own, so that drops stand in rows and legs serve both
 * rows that lie head to head.
 */
export function naturalPlace(stalls: readonly Stall[], frame: LotFrame): Point2 {
  if (stalls.length === 1) {
    const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stalls[0]!);
    const right = middle([entryRight, headRight]);
    const left = middle([entryLeft, headLeft]);
    const [a, b] = [frame.into(right), frame.into(left)];
    return a[0] - b[0] > 0.1 || (Math.abs(a[0] - b[0]) <= 0.1 && a[1] > b[1]) ? right : left;
  }
  return middle(stalls.map((stall) => middle(stallRectangle(stall))));
}

/** How far a place is from being the natural one, feet, a long tap counting as well. */
export const strayOf = ({ box, tap }: HangingPlace, [x, y]: Point2): number =>
  Math.hypot(box[0] - x, box[1] - y) + TAP * (Number.isFinite(tap) ? tap : NO_TAP);

function middle(points: readonly Point2[]): Point2 {
  const sum = points.reduce((all, [x, y]): Point2 => [all[0] + x, all[1] + y], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}
