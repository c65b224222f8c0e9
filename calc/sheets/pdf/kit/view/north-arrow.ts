import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2, Site } from '../../../../../routing/site/site.ts';
import { BLACK, PENS } from '../ink.ts';
import { centred, type Pen } from '../pen.ts';

const RADIUS = 17;

/** An arrow to the north about a point, by the compass bearing of +y; without a bearing the sheet says so. */
export function drawNorthArrow(pen: Pen, [x, y]: Point2, { georef }: Pick<Site, 'georef'>): void {
  if (georef === undefined) {
    pen.text('North not', [x, y + 2], { size: pen.lettering.sizes.small, anchor: 'middle' });
    pen.text('given', [x, y - 8], { size: pen.lettering.sizes.small, anchor: 'middle' });
    return;
  }
  // +y lies `bearing` degrees clockwise of north, so north lies as many counter-clockwise of +y.
  const [ux, uy] = direction(90 + georef.bearing);
  const at = (along: number, left: number): Point2 => [x + along * ux - left * uy, y + along * uy + left * ux];
  pen.circle([x, y], RADIUS * 0.62, PENS.thin);
  pen.fill([at(RADIUS, 0), at(-RADIUS * 0.6, 6), at(-RADIUS * 0.3, 0)], BLACK);
  pen.line([at(RADIUS, 0), at(-RADIUS * 0.6, -6), at(-RADIUS * 0.3, 0)], PENS.thin, true);
  const [nx, ny] = at(RADIUS + 9, 0);
  pen.text('N', [nx, centred(ny, pen.lettering.sizes.note)], {
    size: pen.lettering.sizes.note,
    weight: 'bold',
    anchor: 'middle',
  });
}
