import { aisleClearHeight } from '../../../routing/checks/drops/clear-height.ts';
import { insideOf } from '../../../routing/plane/obstacle.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { outlineOf, stallOutline, stallsIn } from '../../../routing/standing/outlines.ts';

/** The greatest clear height that the rules of a site keep over a place of its ground, feet; null over neither stall nor aisle. */
export function clearHeightOver({ aisles, stalls, rules }: Site, [x, y]: Point2): number | null {
  const heights = [
    ...aisles.filter((aisle) => insideOf(outlineOf(aisle), x, y)).map((aisle) => aisleClearHeight(aisle, rules)),
    ...stallsIn(stalls, { minX: x, minY: y, maxX: x, maxY: y })
      .filter((stall) => insideOf(stallOutline(stall), x, y))
      .map(({ use }) => (use === 'van-accessible' ? rules.clearHeight.van : rules.clearHeight.stall)),
  ];
  return heights.length === 0 ? null : Math.max(...heights);
}
