import { type Box, widened } from '../../plane/box.ts';
import { type BoxIndex, indexing, positionsIn } from '../../plane/box-index.ts';
import { LENGTH_SLACK } from '../../plane/space.ts';
import type { Member, Point3 } from '../../site/site.ts';
import { distanceAside } from './held-parts.ts';

/** The members of a site, to be searched by box. */
export type Steel = BoxIndex<Member>;

/** The plan's box of a member. */
export const memberBox = ({ from, to }: Member): Box => ({
  minX: Math.min(from[0], to[0]),
  minY: Math.min(from[1], to[1]),
  maxX: Math.max(from[0], to[0]),
  maxY: Math.max(from[1], to[1]),
});

/** The members, indexed. */
export const steelOf: (members: readonly Member[]) => Steel = indexing(memberBox);

/** Members whose box comes within a reach, feet, of a box of the plan. */
export const membersNear = (steel: Steel, box: Box, reach: number): Member[] =>
  positionsIn(steel, widened(box, reach + LENGTH_SLACK)).map((i) => steel.items[i]!);

/** Some member above or beside a point is within a reach of it in the plan, feet: mostly one needs to know no more. */
export function isHeld(steel: Steel, at: Point3, reach: number): boolean {
  const [x, y] = at;
  for (const member of membersNear(steel, { minX: x, minY: y, maxX: x, maxY: y }, reach)) {
    const feet = distanceAside(member, at);
    if (feet !== null && feet <= reach + LENGTH_SLACK) return true;
  }
  return false;
}

/** The nearest member above or beside a point and how far it is in the plan, feet; null where none is above or beside. */
export function nearestMember(steel: Steel, at: Point3): { readonly member: Member; readonly feet: number } | null {
  const [x, y] = at;
  for (let reach = 8; ; reach *= 4) {
    const near = membersNear(steel, { minX: x, minY: y, maxX: x, maxY: y }, reach);
    let best: { readonly member: Member; readonly feet: number } | null = null;
    for (const member of near) {
      const feet = distanceAside(member, at);
      if (feet !== null && feet < (best?.feet ?? Number.POSITIVE_INFINITY)) best = { member, feet };
    }
    // A member farther away than the box reaches may be hidden by a nearer one outside it.
    if (best !== null && best.feet <= reach) return best;
    if (near.length === steel.items.length) return best;
  }
}
