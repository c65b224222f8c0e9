import type { Point2, Point3 } from '../../../routing/site/site.ts';

/** A line that a site is cut along, and how far one looks past it: to the left of the way, to the right where negative. Feet. */
export interface Cut {
  readonly from: Point2;
  readonly to: Point2;
  readonly look: number;
}

/**
 * A cut as the eye has it that looks square at it: `across` runs to its right from 0 at the left end of the cut, `away` from
 * it into the view.
 */
export interface CutView {
  readonly length: number;
  readonly depth: number;
  /** Ends of the cut, the left one first. */
  readonly left: Point2;
  readonly right: Point2;
  readonly across: (at: Point2 | Point3) => number;
  readonly away: (at: Point2 | Point3) => number;
}

/** A cut shorter than this shows nothing, feet. */
const LEAST = 0.01;

/** How the eye has a cut; null where its ends are one place. */
export function cutView({ from, to, look }: Cut): CutView | null {
  const [left, right] = look < 0 ? [to, from] : [from, to];
  const length = Math.hypot(right[0] - left[0], right[1] - left[1]);
  if (length < LEAST) return null;
  const [ux, uy] = [(right[0] - left[0]) / length, (right[1] - left[1]) / length];
  return {
    length,
    depth: Math.abs(look),
    left,
    right,
    across: ([x, y]) => (x - left[0]) * ux + (y - left[1]) * uy,
    away: ([x, y]) => (y - left[1]) * ux - (x - left[0]) * uy,
  };
}

/** Where a straight line crosses the cut: how far across, and its elevation; null where it does not, or lies along it. */
export function crossing(a: Point3, b: Point3, view: CutView): { readonly across: number; readonly z: number } | null {
  const [p, q] = [view.away(a), view.away(b)];
  if (p === q || p > 0 === q > 0) return null;
  const t = p / (p - q);
  const across = view.across(a) + t * (view.across(b) - view.across(a));
  return across < 0 || across > view.length ? null : { across, z: a[2] + t * (b[2] - a[2]) };
}

/** The part of a straight line that is seen past the cut, as [across, elevation]; null where none is. */
export function seenPast(a: Point3, b: Point3, view: CutView): readonly [Point2, Point2] | null {
  let [from, to] = [0, 1];
  const within = (start: number, end: number, low: number, high: number): boolean => {
    if (start === end) return start >= low - 1e-9 && start <= high + 1e-9;
    const [p, q] = [(low - start) / (end - start), (high - start) / (end - start)];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
    return from <= to;
  };
  if (!within(view.away(a), view.away(b), 0, view.depth)) return null;
  if (!within(view.across(a), view.across(b), 0, view.length)) return null;
  const at = (t: number): Point2 => [view.across(a) + t * (view.across(b) - view.across(a)), a[2] + t * (b[2] - a[2])];
  return [at(from), at(to)];
}

/** Whether a place is at the cut or seen past it; what is within `near` feet before it counts as at the cut. */
export const isSeen = (at: Point2 | Point3, view: CutView, near = 0): boolean => {
  const [u, v] = [view.across(at), view.away(at)];
  return u >= 0 && u <= view.length && v >= -near && v <= view.depth;
};
