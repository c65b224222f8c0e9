import type { Extent } from '../../../drawing/drawing.ts';
import { type Area, right, top } from '../../kit/area.ts';
import { PALE, PENS } from '../../kit/ink.ts';
import { centred, type Pen } from '../../kit/pen.ts';
import { sizeOf } from '../../kit/view/view.ts';
import type { Tile } from './tiles.ts';

const LABEL_ROOM = 14;

/** Where one of the enlarged plans lies among the others: all their windows with sheet numbers, this one shaded. */
export function drawKeyPlan(
  pen: Pen,
  area: Area,
  tiles: readonly Tile[],
  mine: Tile,
  numberOf: (tile: Tile) => string,
): void {
  const all = tiles.reduce<Extent>(
    (box, { window }) => ({
      minX: Math.min(box.minX, window.minX),
      minY: Math.min(box.minY, window.minY),
      maxX: Math.max(box.maxX, window.maxX),
      maxY: Math.max(box.maxY, window.maxY),
    }),
    mine.window,
  );
  const { width, height } = sizeOf(all);
  const room = area.height - LABEL_ROOM;
  const perFoot = Math.min(area.width / width, room / height);
  const left = right(area) - width * perFoot;
  const placed = (window: Extent): Area => ({
    x: left + (window.minX - all.minX) * perFoot,
    y: area.y + (window.minY - all.minY) * perFoot,
    width: (window.maxX - window.minX) * perFoot,
    height: (window.maxY - window.minY) * perFoot,
  });
  pen.fillArea(placed(mine.window), PALE);
  for (const tile of tiles) {
    const place = placed(tile.window);
    pen.rectangle(place, tile === mine ? PENS.heavy : PENS.thin);
    const size = pen.lettering.sizes.small;
    const number = numberOf(tile);
    // A narrow window has room for the figures alone.
    const isWide = pen.lettering.width(number, size, 'bold') + 3 <= place.width;
    const words = isWide ? number : number.replace(/^.*-/, '');
    if (pen.lettering.width(words, size, 'bold') + 1 <= place.width && size <= place.height)
      pen.text(words, [place.x + place.width / 2, centred(place.y + place.height / 2, size)], {
        size,
        anchor: 'middle',
        weight: tile === mine ? 'bold' : 'regular',
      });
  }
  pen.text('KEY PLAN', [right(area), top(area) - pen.lettering.sizes.small], {
    size: pen.lettering.sizes.small,
    weight: 'bold',
    anchor: 'right',
  });
}
