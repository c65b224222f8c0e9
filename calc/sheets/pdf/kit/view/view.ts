import type { Point2 } from '../../../../../routing/site/site.ts';
import type { Extent } from '../../../drawing/drawing.ts';
import type { Area } from '../area.ts';
import { pointsPerFoot, type Scale } from './scales.ts';

/** A window of the site as it lies on a sheet. */
export interface View {
  readonly scale: Scale;
  /** Points a foot. */
  readonly perFoot: number;
  /** Where the window lies on the sheet. */
  readonly area: Area;
  /** What of the site it shows, feet. */
  readonly window: Extent;
  /** A point of the site on the sheet. */
  readonly at: (point: Point2) => Point2;
}

/** A window of the site at a scale, in the middle of an area of the sheet. */
export function viewIn(area: Area, window: Extent, scale: Scale): View {
  const perFoot = pointsPerFoot(scale);
  const width = (window.maxX - window.minX) * perFoot;
  const height = (window.maxY - window.minY) * perFoot;
  const x = area.x + (area.width - width) / 2;
  const y = area.y + (area.height - height) / 2;
  return {
    scale,
    perFoot,
    area: { x, y, width, height },
    window,
    at: ([px, py]) => [x + (px - window.minX) * perFoot, y + (py - window.minY) * perFoot],
  };
}

/** Window grown by so many feet on each side. */
export const grown = ({ minX, minY, maxX, maxY }: Extent, by: number): Extent => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});

export const sizeOf = ({ minX, minY, maxX, maxY }: Extent): { readonly width: number; readonly height: number } => ({
  width: maxX - minX,
  height: maxY - minY,
});

/** The point lies in the window. */
export const shows = ({ minX, minY, maxX, maxY }: Extent, [x, y]: Point2): boolean =>
  x >= minX && x <= maxX && y >= minY && y <= maxY;

/** The part of a straight that lies in a window; null where none of it does. */
export function partIn(
  { minX, minY, maxX, maxY }: Extent,
  from: Point2,
  to: Point2,
): readonly [from: Point2, to: Point2] | null {
  let [first, last] = [0, 1];
  for (const [axis, low, high] of [
    [0, minX, maxX],
    [1, minY, maxY],
  ] as const) {
    const step = to[axis] - from[axis];
    if (Math.abs(step) < 1e-9) {
      if (from[axis] < low || from[axis] > high) return null;
      continue;
    }
    const [a, b] = [(low - from[axis]) / step, (high - from[axis]) / step];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  if (first > last) return null;
  const at = (share: number): Point2 => [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  return [at(first), at(last)];
}
