import { memberElevation, steelOver } from '../../../network/hang-under.ts';
import type { Member, Point2 } from '../../../site/site.ts';

/** A raceway hangs so far below the line of a member, feet. Common practice, no source. */
export const BELOW_MEMBER = 1;

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

/** Feet in the plan from a place to a member. */
export function away({ from, to }: Member, [x, y]: Point2): number {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
  const square = ux * ux + uy * uy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - from[0]) * ux + (y - from[1]) * uy) / square)) : 0;
  return Math.hypot(from[0] + t * ux - x, from[1] + t * uy - y);
}
