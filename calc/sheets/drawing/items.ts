import { inPlan } from '../../../routing/plane/space.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { DrawnItem, DrawnText } from './drawing.ts';
import type { LayerName } from './layers.ts';

/** Heights of lettering, feet of the site: 3/32 in and 1/8 in at 1/8 in = 1 ft. */
export const SMALL = 0.75;
export const LARGE = 1;

export const lineItem = (layer: LayerName, points: readonly Point2[], closed = false): DrawnItem => ({
  kind: 'line',
  layer,
  points,
  closed,
});

export const lineInSpace = (layer: LayerName, points: readonly Point3[]): DrawnItem => ({
  kind: 'line',
  layer,
  points: points.map(inPlan),
  closed: false,
  z: points.map(([, , z]) => z),
});

export const textItem = (layer: LayerName, at: Point2, words: string, more: Partial<DrawnText> = {}): DrawnItem => ({
  kind: 'text',
  layer,
  at,
  text: words,
  height: SMALL,
  turn: 0,
  anchor: 'middle',
  ...more,
});
