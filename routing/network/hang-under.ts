import { hypot2 } from '../plane/hypot.ts';
import type { Member, Point2 } from '../site/site.ts';

/** Steel farther below a member than this, feet, is of another frame. Common practice, no source. */
const SAME_FRAME = 3;
/** So near in the plan, feet, a place lies on a member. */
const ON = 0.05;

/** The elevation of a member over a place of the plan, feet; null where the place does not lie on it. */
export function memberElevation({ from, to }: Member, at: Point2): number | null {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
  const length = hypot2(ux, uy);
  if (!(length > 0)) return null;
  const along = ((at[0] - from[0]) * ux + (at[1] - from[1]) * uy) / length;
  const aside = Math.abs((at[0] - from[0]) * uy - (at[1] - from[1]) * ux) / length;
  if (aside > ON || along < -ON || along > length + ON) return null;
  return from[2] + ((to[2] - from[2]) * Math.min(length, Math.max(0, along))) / length;
}

/**
 * The lowest steel that a raceway along a member has to pass under, told at a place on it: the member itself, or as far
 * below it as a member that crosses it lies. So a raceway keeps one distance from a canopy, be it along its beams or
 * along the purlins on them. Feet; null where the place is not on the member.
 */
export function steelOver(members: readonly Member[], member: Member, at: Point2): number | null {
  const own = memberElevation(member, at);
  if (own === null) return null;
  let lower = 0;
  for (const other of members) {
    if (other === member) continue;
    const place = crossingOf(member, other);
    if (!place) continue;
    const below = (memberElevation(member, place) ?? 0) - (memberElevation(other, place) ?? Number.POSITIVE_INFINITY);
    if (below <= SAME_FRAME && below > lower) lower = below;
  }
  return own - lower;
}

/**
 * The place of the plan where two members meet end to end and a straight line from one place to another passes: there
 * the steel of a bent canopy turns up or down, and what hangs under it with it. Null where there is none.
 */
export function turnBetween(a: Member, b: Member, from: Point2, to: Point2): Point2 | null {
  for (const end of [a.from, a.to])
    for (const other of [b.from, b.to]) {
      if (hypot2(end[0] - other[0], end[1] - other[1]) > ON) continue;
      const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
      const length = hypot2(ux, uy);
      const along = ((end[0] - from[0]) * ux + (end[1] - from[1]) * uy) / length;
      const aside = Math.abs((end[0] - from[0]) * uy - (end[1] - from[1]) * ux) / length;
      if (aside <= ON && along > ON && along < length - ON) return [end[0], end[1]];
    }
  return null;
}

/** Where two members that are not parallel cross or touch in the plan; null where they do not. */
function crossingOf(a: Member, b: Member): Point2 | null {
  const [ux, uy] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [vx, vy] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const cross = ux * vy - uy * vx;
  const [lengthA, lengthB] = [hypot2(ux, uy), hypot2(vx, vy)];
  if (Math.abs(cross) < 0.02 * lengthA * lengthB || cross === 0) return null;
  const [dx, dy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const s = (dx * vy - dy * vx) / cross;
  const t = (dx * uy - dy * ux) / cross;
  const [slackA, slackB] = [ON / lengthA, ON / lengthB];
  if (s < -slackA || s > 1 + slackA || t < -slackB || t > 1 + slackB) return null;
  return [a.from[0] + s * ux, a.from[1] + s * uy];
}
