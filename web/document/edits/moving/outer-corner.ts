import { placedKind } from '../../../../routing/site/kinds/kinds.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { Gathered } from '../gather.ts';
import { moved } from './motion.ts';

/**
 * The upper right corner of the extent of elements, outlines and all, in the file's units; null where none has a place.
 * A line through it, up the sheet or across, leaves them all on one side: what is mirrored in it does not lie on them.
 */
export function outerCornerOf(elements: readonly Gathered[]): Point2 | null {
  let [maxX, maxY] = [-Infinity, -Infinity];
  const point = (at: Point2): Point2 => {
    maxX = Math.max(maxX, at[0]);
    maxY = Math.max(maxY, at[1]);
    return at;
  };
  for (const { list, element } of elements) {
    moved(list, element, { point, direction: (was) => was, lift: 0, mirrors: false });
    const kind = placedKind(list);
    if (kind) for (const at of kind.points(element as never)) point(at);
  }
  return Number.isFinite(maxX) ? [maxX, maxY] : null;
}
