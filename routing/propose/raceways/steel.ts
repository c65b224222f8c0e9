import { memberElevation, steelOver } from '../../network/hang-under.ts';
import type { Member, Point2 } from '../../site/site.ts';

/** A raceway hangs so far below the line of a member, feet. Common practice, no source. */
export const BELOW_MEMBER = 1;
/** So near to a member in the plan, feet, a raceway is carried by it. Common practice, no source: half a purlin's pitch, ample. */
const CARRIED = 5;

/** The lowest steel over a place, and how high a raceway hangs under it, feet; null where no member lies over it. */
export function steelAt(
  members: readonly Member[],
  at: Point2,
): { readonly steel: number; readonly hung: number } | null {
  let lowest: number | null = null;
  for (const member of members) {
    if (memberElevation(member, at) === null) continue;
    const steel = steelOver(members, member, at);
    if (steel !== null && (lowest === null || steel < lowest)) lowest = steel;
  }
  return lowest === null ? null : { steel: lowest, hung: lowest - BELOW_MEMBER };
}

/** Whether steel is near all along a straight of the plan. */
export function isCarried(members: readonly Member[], a: Point2, b: Point2): boolean {
  const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / CARRIED));
  for (let i = 0; i <= steps; i++) {
    const at: Point2 = [a[0] + ((b[0] - a[0]) * i) / steps, a[1] + ((b[1] - a[1]) * i) / steps];
    if (!members.some((member) => away(member, at) <= CARRIED)) return false;
  }
  return true;
}

/** Feet in the plan from a place to a member. */
export function away({ from, to }: Member, [x, y]: Point2): number {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
  const square = ux * ux + uy * uy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - from[0]) * ux + (y - from[1]) * uy) / square)) : 0;
  return Math.hypot(from[0] + t * ux - x, from[1] + t * uy - y);
}
