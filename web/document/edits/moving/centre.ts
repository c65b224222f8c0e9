import type { Point2 } from '../../../../routing/site/site.ts';
import type { Gathered } from '../gather.ts';
import { moved } from './motion.ts';

/** The middle of the extent of elements' points, in the file's units; null where none of them has a place. */
export function centreOf(elements: readonly Gathered[]): Point2 | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const point = (at: Point2): Point2 => {
    minX = Math.min(minX, at[0]);
    minY = Math.min(minY, at[1]);
    maxX = Math.max(maxX, at[0]);
    maxY = Math.max(maxY, at[1]);
    return at;
  };
  // A motion that goes nowhere visits every point that an element has.
  for (const { list, element } of elements)
    moved(list, element, { point, direction: (was) => was, lift: 0, mirrors: false });
  return minX <= maxX ? [(minX + maxX) / 2, (minY + maxY) / 2] : null;
}
