import { between, distance, LENGTH_SLACK } from '../../plane/space.ts';
import type { Member, Point3 } from '../../site/site.ts';
import { shareAlong } from './held-parts.ts';
import { holdersAlong } from './holders.ts';
import type { Steel } from './steel-near.ts';

/** So many feet of something long, hung from one place of a member. */
export interface PointShare {
  readonly member: Member;
  readonly feet: number;
  /** On the member. */
  readonly at: Point3;
}

/** So many feet of it, hung evenly along a part of a member. */
export interface RunShare {
  readonly member: Member;
  readonly feet: number;
  readonly from: Point3;
  readonly to: Point3;
}

export type Share = PointShare | RunShare;

/** The place of a member nearest to a point in the plan. */
export function placeOn(member: Member, at: Point3): Point3 {
  const { from, to } = member;
  const [x, y] = from;
  if (x === to[0] && y === to[1]) return from[2] > to[2] ? from : to;
  return between(from, to, shareAlong(member, at));
}

interface Stretch {
  readonly member: Member | null;
  readonly atEnd: boolean;
  readonly a: Point3;
  readonly b: Point3;
  readonly feet: number;
}

/** Points this near on a member are one, feet. */
const ONE_PLACE = 1e-6;

/**
 * Hands a hanging path to the members that hold it, each foot of it to one: what lies along a member as a run on it, what
 * crosses it as a point. Between two members a path spans, so each has half of that; before the first and after the last
 * all of it. `loose` are its feet where no member holds any of it.
 */
export function shareOut(
  path: readonly Point3[],
  steel: Steel,
  reach: number,
): { readonly shares: readonly Share[]; readonly loose: number } {
  const stretches = stretchesOf(path, steel, reach);
  const shares: Share[] = [];
  let gap = 0;
  let last: Stretch | null = null;
  for (const stretch of stretches) {
    if (stretch.member === null) {
      gap += stretch.feet;
      continue;
    }
    if (gap > 0) {
      if (last !== null) addPoint(shares, last.member!, last.b, gap / 2);
      addPoint(shares, stretch.member, stretch.a, last === null ? gap : gap / 2);
      gap = 0;
    }
    addHeld(shares, stretch.member, stretch);
    last = stretch;
  }
  if (gap > 0 && last !== null) addPoint(shares, last.member!, last.b, gap);
  return { shares, loose: last === null ? gap : 0 };
}

function stretchesOf(path: readonly Point3[], steel: Steel, reach: number): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const whole = distance(a, b);
    if (whole <= LENGTH_SLACK) continue;
    for (const { from, to, member, atEnd } of holdersAlong(a, b, steel, reach))
      stretches.push({
        member,
        atEnd,
        a: between(a, b, from),
        b: between(a, b, to),
        feet: (to - from) * whole,
      });
  }
  return stretches;
}

function addHeld(shares: Share[], member: Member, { a, b, feet, atEnd }: Stretch): void {
  const [from, to] = [placeOn(member, a), placeOn(member, b)];
  const along = distance(from, to);
  if (atEnd || along < feet / 2) {
    addPoint(shares, member, between(a, b, 0.5), feet);
    return;
  }
  const last = shares.at(-1);
  const goesOn =
    last !== undefined &&
    'from' in last &&
    last.member === member &&
    distance(last.to, from) <= ONE_PLACE &&
    Math.abs(last.feet / distance(last.from, last.to) - feet / along) <= ONE_PLACE &&
    distance(last.from, to) > distance(last.from, last.to);
  if (goesOn) shares[shares.length - 1] = { ...last, to, feet: last.feet + feet };
  else shares.push({ member, feet, from, to });
}

function addPoint(shares: Share[], member: Member, near: Point3, feet: number): void {
  const at = placeOn(member, near);
  const last = shares.at(-1);
  if (last !== undefined && 'at' in last && last.member === member && distance(last.at, at) <= ONE_PLACE)
    shares[shares.length - 1] = { ...last, feet: last.feet + feet };
  else shares.push({ member, feet, at });
}
