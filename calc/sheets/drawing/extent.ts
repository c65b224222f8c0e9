import { boxOf, NO_BOX } from '../../../routing/plane/box.ts';
import { isPlainGrid, onGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { DrawnItem, Extent } from './drawing.ts';

/** Room that letters take, as a share of their height: enough to keep them inside a frame. */
const LETTER_WIDTH = 0.62;

/** Half of what an item about a point takes. */
const halfOf = (item: Exclude<DrawnItem, { readonly kind: 'line' }>): number =>
  item.kind === 'circle' ? item.radius : item.kind === 'text' ? item.height * LETTER_WIDTH * item.text.length : 1;

/** The box around all items; null where there are none. */
export function extentOf(items: readonly DrawnItem[]): Extent | null {
  let { minX, minY, maxX, maxY } = NO_BOX;
  for (const item of items) {
    const { points, half } =
      item.kind === 'line' ? { points: item.points, half: 0 } : { points: [item.at], half: halfOf(item) };
    const box = boxOf(points);
    minX = Math.min(minX, box.minX - half);
    minY = Math.min(minY, box.minY - half);
    maxX = Math.max(maxX, box.maxX + half);
    maxY = Math.max(maxY, box.maxY + half);
  }
  return minX > maxX ? null : { minX, minY, maxX, maxY };
}

/** How far items reach as the gridlines of their site measure it; `inner` is how far they reach as the site does. */
export function extentOnGrid({ gridlines: grid }: Site, items: readonly DrawnItem[], inner: Extent): Extent {
  if (isPlainGrid(grid)) return inner;
  const on = (at: Point2): Point2 => onGrid(grid, at);
  const laid = items.map(
    (item): DrawnItem =>
      item.kind === 'line' ? { ...item, points: item.points.map(on) } : { ...item, at: on(item.at) },
  );
  return extentOf(laid) ?? inner;
}
