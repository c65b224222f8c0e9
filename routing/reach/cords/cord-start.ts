import { length2 } from '../../plane/distance.ts';
import { distance } from '../../plane/space.ts';
import type { Drop, Rules } from '../../site/site.ts';
import type { CordStart } from '../stall-reach.ts';

/**
 * Where a drop's cord hangs from, and what of it is left there: the cord less the way from the box and the slack. That of
 * a pedestal lies along the ground from its foot.
 */
export function cordStart(
  drop: Pick<Drop, 'box' | 'retractor' | 'cord' | 'mount'>,
  rules: Pick<Rules, 'cordSlack'>,
): CordStart {
  const from = drop.retractor ?? drop.box;
  const available = drop.cord - distance(drop.box, from) - rules.cordSlack;
  return { from, available, onGround: drop.mount === 'pedestal' };
}

/**
 * Feet of cord to an inlet `plan` feet off in the plan, at an elevation. Hung from above it goes straight: sqrt(plan^2 +
 * dz^2). From a pedestal it goes down to the foot, along the ground and up to the inlet, where that is the longer.
 */
export function cordLength({ from, onGround }: CordStart, plan: number, elevation: number): number {
  const straight = length2(plan, from[2] - elevation);
  return onGround ? Math.max(straight, from[2] + plan + elevation) : straight;
}

/** How far off in the plan a cord ends that is all let out, at an elevation, feet; null where it does not come there. */
export function planReach({ from, available, onGround }: CordStart, elevation: number): number | null {
  const fall = Math.abs(from[2] - elevation);
  if (available < fall) return null;
  const straight = Math.sqrt((available - fall) * (available + fall));
  if (!onGround) return straight;
  const along = available - from[2] - elevation;
  return along < 0 ? null : Math.min(straight, along);
}
