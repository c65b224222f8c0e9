import { isPlainGrid, onGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { DrawnItem, Extent } from './drawing.ts';

/** Room that letters take, as a share of their height: enough to keep them inside a frame. */
const LETTER_WIDTH = 0.62;

function* cornersOf(item: DrawnItem): Generator<Point2> {
  if (item.kind === 'line') yield* item.points;
  else {
    const half =
      item.kind === 'circle' ? item.radius : item.kind === 'text' ? item.height * LETTER_WIDTH * item.text.length : 1;
    yield [item.at[0] - half, item.at[1] - half];
    yield [item.at[0] + half, item.at[1] + half];
  }
}

/** The box around all items; null where there are none. */
export function extentOf(items: readonly DrawnItem[]): Extent | null {
  let [minX, minY, maxX, maxY] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const item of items)
    for (const [x, y] of cornersOf(item)) {
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
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
