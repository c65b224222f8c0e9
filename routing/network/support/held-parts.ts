import { hypot2 } from '../../plane/hypot.ts';
import { LENGTH_SLACK } from '../../plane/space.ts';
import type { Member, Point3 } from '../../site/site.ts';

/**
 * How far over the line of a member something may lie and still be beside it, feet: strapped to the side of the steel or
 * on top of it. Common practice, no source.
 */
export const STRAPPED_BESIDE = 1.5;

/** A part of a straight, as shares of its length. */
export type ShareOfStraight = readonly [from: number, to: number];

/**
 * The parts of the straight from `a` to `b` that a member may hold: those whose nearest point of the member, in the
 * plan, is no farther than `reach` feet, and is above or no more than `STRAPPED_BESIDE` below. Exact: along the straight, the
 * nearest point is one end of the member, then runs along it, then is the other end, and in each of the three both
 * conditions hold on one interval. In order.
 */
export function heldParts(
  { from, to }: Pick<Member, 'from' | 'to'>,
  a: Point3,
  b: Point3,
  reach: number,
): ShareOfStraight[] {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const dz = b[2] - a[2];
  const limit = reach + LENGTH_SLACK;
  const { length, ux, uy, s0, s1, turns } = lieOf({ from, to }, a, b);
  const parts: ShareOfStraight[] = [];
  let begin = 0;
  for (let turn = 0; turn <= turns.length; turn++) {
    const end = turns[turn] ?? 1;
    const s = s0 + (s1 * (begin + end)) / 2;
    const along = s > 0 && s < length;
    const near = along
      ? within(begin, end, (a[0] - from[0]) * uy - (a[1] - from[1]) * ux, dx * uy - dy * ux, -limit, limit)
      : inCircle(begin, end, a, dx, dy, s > 0 ? to : from, limit);
    const rise = along ? (to[2] - from[2]) / length : 0;
    const level = along ? from[2] + s0 * rise : endLevel(from, to, s > 0, length);
    const above =
      near && within(near[0], near[1], level - a[2], s1 * rise - dz, -STRAPPED_BESIDE - LENGTH_SLACK, Infinity);
    if (above) parts.push(above);
    begin = end;
  }
  return parts;
}

/**
 * How a straight lies to a member: the member's length and direction in plan, where the straight's nearest point lies
 * along it, feet from its start (`s0` at `a`, `s1` more by the share), and the shares at which that comes to an end.
 */
function lieOf({ from, to }: Pick<Member, 'from' | 'to'>, a: Point3, b: Point3) {
  const mx = to[0] - from[0];
  const my = to[1] - from[1];
  const length = hypot2(mx, my);
  const ux = length > LENGTH_SLACK ? mx / length : 0;
  const uy = length > LENGTH_SLACK ? my / length : 0;
  const s0 = (a[0] - from[0]) * ux + (a[1] - from[1]) * uy;
  const s1 = (b[0] - a[0]) * ux + (b[1] - a[1]) * uy;
  return { length, ux, uy, s0, s1, turns: s1 === 0 ? NO_TURNS : turnsAt(-s0 / s1, (length - s0) / s1) };
}

const NO_TURNS: readonly number[] = [];

/** Those of two shares that lie within the straight, the lower first. */
function turnsAt(p: number, q: number): readonly number[] {
  const first = Math.min(p, q);
  const last = Math.max(p, q);
  if (first > 0 && first < 1) return last < 1 ? [first, last] : [first];
  return last > 0 && last < 1 ? [last] : NO_TURNS;
}

/** Shares of the straight from `a` to `b` at which the nearest point of a member comes to one of its ends, in order. */
export const turnsAlong = (member: Member, a: Point3, b: Point3): readonly number[] => lieOf(member, a, b).turns;

/** No longer in plan than this, feet, a leg stands upright: against a column, a wall or equipment, which hold it. */
const UPRIGHT = 0.25;

export const isUpright = (a: Point3, b: Point3): boolean =>
  hypot2(b[0] - a[0], b[1] - a[1]) <= UPRIGHT && Math.abs(b[2] - a[2]) > UPRIGHT;

/** The elevation at an end of a member; of one that stands upright, its top. */
const endLevel = (from: Point3, to: Point3, last: boolean, length: number): number =>
  length > LENGTH_SLACK ? (last ? to : from)[2] : Math.max(from[2], to[2]);

/** The part of [begin, end] on which `at + t * by` is from `low` to `high`. */
function within(begin: number, end: number, at: number, by: number, low: number, high: number): ShareOfStraight | null {
  if (by === 0) return at >= low && at <= high ? [begin, end] : null;
  const p = (low - at) / by;
  const q = (high - at) / by;
  const from = Math.max(begin, Math.min(p, q));
  const to = Math.min(end, Math.max(p, q));
  return from <= to ? [from, to] : null;
}

/** The part of [begin, end] on which a straight is in the circle of a radius about a point of the plan. */
function inCircle(
  begin: number,
  end: number,
  a: Point3,
  dx: number,
  dy: number,
  middle: Point3,
  radius: number,
): ShareOfStraight | null {
  const x = a[0] - middle[0];
  const y = a[1] - middle[1];
  const square = dx * dx + dy * dy;
  const outside = x * x + y * y - radius * radius;
  if (square === 0) return outside <= 0 ? [begin, end] : null;
  const half = x * dx + y * dy;
  const root = half * half - square * outside;
  if (root < 0) return null;
  const from = Math.max(begin, (-half - Math.sqrt(root)) / square);
  const to = Math.min(end, (-half + Math.sqrt(root)) / square);
  return from <= to ? [from, to] : null;
}

/** How far along a member its nearest place to a point of the plan is, as a share of it: 0 to 1. */
export function shareAlong({ from, to }: Pick<Member, 'from' | 'to'>, at: Point3): number {
  const mx = to[0] - from[0];
  const my = to[1] - from[1];
  const square = mx * mx + my * my;
  return square > 0 ? Math.min(1, Math.max(0, ((at[0] - from[0]) * mx + (at[1] - from[1]) * my) / square)) : 0;
}

/** The elevation of a member at its nearest place in the plan; of one that stands upright, its top. */
export const levelOver = (member: Pick<Member, 'from' | 'to'>, at: Point3): number =>
  levelAt(member, shareAlong(member, at));

function levelAt({ from, to }: Pick<Member, 'from' | 'to'>, share: number): number {
  if (from[0] === to[0] && from[1] === to[1]) return Math.max(from[2], to[2]);
  return from[2] + share * (to[2] - from[2]);
}

/**
 * How far a member is from a point in the plan, feet; null where it is not above the point or beside it.
 */
export function distanceAside(member: Pick<Member, 'from' | 'to'>, at: Point3): number | null {
  const { from, to } = member;
  const share = shareAlong(member, at);
  if (levelAt(member, share) < at[2] - STRAPPED_BESIDE - LENGTH_SLACK) return null;
  return hypot2(at[0] - from[0] - share * (to[0] - from[0]), at[1] - from[1] - share * (to[1] - from[1]));
}
