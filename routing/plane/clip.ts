import type { Box } from './box.ts';
import type { Point2 } from './point.ts';

/**
 * The part of a polygon inside an upright box, as one outline (Sutherland and Hodgman 1974); empty where there is none.
 * Parts that lie apart are joined along the box's edge by lines of no area, which change neither area nor bounds.
 */
export function clippedToBox(outline: readonly Point2[], { minX, minY, maxX, maxY }: Box): Point2[] {
  let part = clippedToHalf(outline, 0, 1, minX);
  part = clippedToHalf(part, 0, -1, maxX);
  part = clippedToHalf(part, 1, 1, minY);
  return clippedToHalf(part, 1, -1, maxY);
}

/** The part of a polygon whose coordinate on `axis` is not under (`sense` 1) or not over (-1) a value. */
function clippedToHalf(outline: readonly Point2[], axis: 0 | 1, sense: 1 | -1, value: number): Point2[] {
  const part: Point2[] = [];
  for (let i = 0; i < outline.length; i++) {
    const a = outline[(i + outline.length - 1) % outline.length]!;
    const b = outline[i]!;
    const da = sense * (a[axis] - value);
    const db = sense * (b[axis] - value);
    if (da < 0 !== db < 0) {
      const t = da / (da - db);
      const across = a[1 - axis]! + t * (b[1 - axis]! - a[1 - axis]!);
      part.push(axis === 0 ? [value, across] : [across, value]);
    }
    if (db >= 0) part.push(b);
  }
  return part;
}
