import type { Box } from './box.ts';
import type { Point2 } from './point.ts';

/**
 * The part of a straight line that lies within a box, as shares of its length from 0 at `from` to 1 at `to`; null where
 * none does. After Liang and Barsky, "A new concept and method for line clipping", ACM Trans. Graphics 3(1), 1984.
 */
export function clippedLine(
  from: Point2,
  to: Point2,
  box: Box,
): { readonly begins: number; readonly ends: number } | null {
  let begins = 0;
  let ends = 1;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  for (const [run, room] of [
    [-dx, from[0] - box.minX],
    [dx, box.maxX - from[0]],
    [-dy, from[1] - box.minY],
    [dy, box.maxY - from[1]],
  ] as const) {
    if (run === 0) {
      if (room < 0) return null;
      continue;
    }
    const at = room / run;
    if (run < 0) begins = Math.max(begins, at);
    else ends = Math.min(ends, at);
    if (begins > ends) return null;
  }
  return { begins, ends };
}
