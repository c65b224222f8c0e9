import { direction as unit } from '../../plane/direction.ts';
import type { Point2 } from '../../plane/point.ts';
import type { Rectangle } from '../../plane/rectangle.ts';
import type { Stall } from '../kinds/stalls.ts';

/** The point `along` feet in from the entry edge and `left` feet to the left of the middle, facing the head. */
export function inStall(stall: Stall, along: number, left: number): Point2 {
  const way = unit(stall.heading);
  return [stall.at[0] + along * way[0] - left * way[1], stall.at[1] + along * way[1] + left * way[0]];
}

/** The stall's rectangle, counter-clockwise, from its right corner on the entry edge as one drives in. */
export function stallRectangle(stall: Stall): Rectangle {
  const half = stall.width / 2;
  return [
    inStall(stall, 0, -half),
    inStall(stall, stall.depth, -half),
    inStall(stall, stall.depth, half),
    inStall(stall, 0, half),
  ];
}
