import type { Point2 } from '../../../routing/site/site.ts';

/** Where a snapped place comes from, to be shown. */
export type Guide =
  | { readonly kind: 'x' | 'y'; readonly at: number; readonly label: string }
  | { readonly kind: 'line'; readonly through: Point2; readonly way: Point2; readonly label: string }
  | { readonly kind: 'segment'; readonly from: Point2; readonly to: Point2; readonly label: string }
  | { readonly kind: 'point'; readonly at: Point2; readonly label: string };
