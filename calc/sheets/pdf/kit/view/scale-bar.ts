import { fromFeet, toFeet } from '../../../../../routing/site/numbers/units.ts';
import type { Units } from '../../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import { BLACK, PENS } from '../ink.ts';
import type { Pen } from '../pen.ts';

const PARTS = 4;
const HEIGHT = 5;
/** Longest bar, points. */
const ROOM = 210;

/** Length of one part of a bar in the units of the site: 1, 2 or 5 of a power of ten, as long as the room allows. */
export function barPart(perFoot: number, units: Units): number {
  const most = fromFeet(ROOM / perFoot, units) / PARTS;
  const power = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].find((step) => step * power <= most)! * power;
}

/** A bar of four parts with its lengths; its lower left corner at a point. */
export function drawScaleBar(pen: Pen, [x, y]: Point2, perFoot: number, units: Units): void {
  const part = barPart(perFoot, units);
  const step = toFeet(part, units) * perFoot;
  for (let i = 0; i < PARTS; i++) {
    const area = { x: x + i * step, y, width: step, height: HEIGHT };
    if (i % 2 === 0) pen.fillArea(area, BLACK);
    pen.rectangle(area, PENS.thin);
  }
  for (const i of [0, 2, 4]) {
    const words = String(Number((i * part).toPrecision(6)));
    pen.text(i === PARTS ? `${words} ${units}` : words, [x + i * step, y + HEIGHT + 4], {
      size: pen.lettering.sizes.small,
      anchor: 'middle',
    });
  }
}
