import { overlapDepth } from '../../plane/overlap-depth.ts';
import { rectangleAt } from '../../plane/rectangle.ts';
import type { Column, Point2 } from '../../site/site.ts';

/** Outlines that lie no farther into each other than this, feet, touch. Common practice, no source. */
export const TOUCHING = 0.1;

/** Two convex outlines lie farther into each other than what touches does. */
export const lieInEachOther = (a: readonly Point2[], b: readonly Point2[]): boolean => overlapDepth(a, b) > TOUCHING;

/** The plan of a column. */
export const columnOutline = ({ at, size, rotation = 0 }: Column): readonly Point2[] => rectangleAt(at, size, rotation);
