import type { Gridline, Point2, Site } from '../../../../../routing/site/site.ts';
import { type Area, top } from '../../kit/area.ts';
import { inkOf, PENS } from '../../kit/ink.ts';
import { type DimensionString, drawDimensions, stringFigures } from '../../kit/labels/dimension.ts';
import { type FreeSpace, freeSpace } from '../../kit/labels/free-space.ts';
import { wrapped } from '../../kit/lettering/lines-of-text.ts';
import { centred, type Pen } from '../../kit/pen.ts';
import type { View } from '../../kit/view/view.ts';

/** Room over and to the left of a view for the bubbles of the gridlines and what lies between them, points. */
export const GRID_GUTTER = 62;

const RADIUS = 13;
const STRING_OFF = 8;
const BUBBLE_OFF = 38;
/** Longest line of a label in a bubble, points; longer ones have two, and what those do not hold is cut short. */
const LABEL = 60;
/** From one line of a label to the next, sizes of its letters. */
const LINES = 1;

/** Gridlines across a view, with a bubble at their upper or left end and the distances between them. */
export function drawGridlines(pen: Pen, view: View, { gridlines, units }: Site): void {
  if (pen.standing?.gridlines) return;
  const { area, window } = view;
  const xs = gridlines.x.filter(({ at }) => at >= window.minX && at <= window.maxX).sort((a, b) => a.at - b.at);
  const ys = gridlines.y.filter(({ at }) => at >= window.minY && at <= window.maxY).sort((a, b) => a.at - b.at);
  const taken = freeSpace();
  pen.onLayer('gridlines', () => {
    const across = xs.map(({ at }): Point2[] => {
      const [x] = view.at([at, 0]);
      return [
        [x, area.y],
        [x, top(area) + BUBBLE_OFF - RADIUS],
      ];
    });
    const along = ys.map(({ at }): Point2[] => {
      const [, y] = view.at([0, at]);
      return [
        [area.x + area.width, y],
        [area.x - BUBBLE_OFF + RADIUS, y],
      ];
    });
    pen.lines([...across, ...along], inkOf('gridlines'));
  });
  pen.onLayer('gridLabels', () => {
    for (const line of xs) bubble(pen, line, [view.at([line.at, 0])[0], top(area) + BUBBLE_OFF], [0, 1], taken);
    for (const line of ys) bubble(pen, line, [area.x - BUBBLE_OFF, view.at([0, line.at])[1]], [-1, 0], taken);
    for (const string of stringsOf(view, xs, ys))
      drawDimensions(pen, string, stringFigures(string, units, pen.lettering));
  });
}

function stringsOf(view: View, xs: readonly Gridline[], ys: readonly Gridline[]): DimensionString[] {
  const strings: DimensionString[] = [];
  if (xs.length > 1)
    strings.push({
      axis: 'x',
      at: top(view.area) + STRING_OFF,
      marks: xs.map(({ at }) => ({ on: view.at([at, 0])[0], feet: at })),
    });
  if (ys.length > 1)
    strings.push({
      axis: 'y',
      at: view.area.x - STRING_OFF,
      marks: ys.map(({ at }) => ({ on: view.at([0, at])[1], feet: at })),
    });
  return strings;
}

/** A label in a circle; a long one in a box; where another is in the way, farther out. */
function bubble(pen: Pen, { label }: Gridline, [x, y]: Point2, [ox, oy]: Point2, taken: FreeSpace): void {
  const size = pen.lettering.sizes.note;
  const lines = wrapped(label, LABEL, size, pen.lettering, { most: 2, weight: 'bold' });
  const half = Math.max(RADIUS, ...lines.map((words) => pen.lettering.width(words, size, 'bold') / 2 + 5));
  const areaAt = (step: number): Area => ({
    x: x + ox * (half - RADIUS + step * 2 * half) - half,
    y: y + oy * step * 2 * RADIUS - RADIUS,
    width: 2 * half,
    height: 2 * RADIUS,
  });
  const place = areaAt(taken.isFree(areaAt(0)) ? 0 : 1);
  if (!taken.isFree(place)) return;
  taken.take(place);
  const middle: Point2 = [place.x + half, place.y + RADIUS];
  // Its line goes on to a bubble that had to stand farther out.
  const edge: Point2 = [middle[0] - ox * half, middle[1] - oy * RADIUS];
  pen.line([[x - ox * RADIUS, y - oy * RADIUS], edge], inkOf('gridlines'));
  if (half === RADIUS) pen.circle(middle, RADIUS, PENS.existing);
  else pen.rectangle(lines.length > 1 ? place : { ...place, y: place.y + 3, height: 2 * RADIUS - 6 }, PENS.existing);
  lines.forEach((words, i) => {
    const up = ((lines.length - 1) / 2 - i) * size * LINES;
    pen.text(words, [middle[0], centred(middle[1] + up, size)], { size, weight: 'bold', anchor: 'middle' });
  });
}
