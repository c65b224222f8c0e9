import type { Point2 } from './point.ts';

/** Twice the area of a polygon: greater than 0 where its outline goes round counter-clockwise, less where clockwise. */
export function twiceAreaOf(outline: readonly Point2[]): number {
  // From its first corner, so that a lot far from the origin loses no digits.
  const [ox, oy] = outline[0] ?? [0, 0];
  let double = 0;
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]!;
    const b = outline[i + 1 === outline.length ? 0 : i + 1]!;
    double += (a[0] - ox) * (b[1] - oy) - (b[0] - ox) * (a[1] - oy);
  }
  return double;
}

/** Area of a polygon, whichever way its outline goes round. */
export const areaOf = (outline: readonly Point2[]): number => Math.abs(twiceAreaOf(outline)) / 2;
