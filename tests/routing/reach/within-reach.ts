import { cordStart, planReach } from '../../../routing/reach/cords/cord-start.ts';
import { cordsTo } from '../../../routing/reach/cords/cords.ts';
import { fieldOf, obstaclesFor } from '../../../routing/reach/field.ts';
import { MARGIN_TIE } from '../../../routing/reach/stall-reach.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';

/**
 * An inlet at a point of the plan and an elevation is within reach of a drop's cord round the parked vehicles: by the
 * taut cord to that one point, for the region that is drawn to be compared with.
 */
export function withinReach(site: Site, dropId: string, point: Point2, inletHeight: number): boolean {
  const start = cordStart(site.drops.find(({ id }) => id === dropId)!, site.rules);
  const radius = planReach(start, inletHeight);
  if (radius === null) return false;
  const from: Point2 = [start.from[0], start.from[1]];
  const [length] = cordsTo(from, [point], obstaclesFor(fieldOf(site), from)).lengths;
  return length! <= radius + MARGIN_TIE;
}
