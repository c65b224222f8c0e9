import type { Point2 } from '../../../../../routing/site/site.ts';
import { LAYERS } from '../../../drawing/layers.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { CAP } from '../lettering/letters.ts';
import { centred, type Pen } from '../pen.ts';

/** Side of a delta, points. */
export const DELTA = 15;
/** Height of a delta in sides. */
export const DELTA_HEIGHT = 0.87;

/** A delta with its number; `at` is the middle of its foot. */
export function drawDelta(pen: Pen, [x, y]: Point2, number: string, side = DELTA): void {
  const corners: readonly Point2[] = [
    [x - side / 2, y],
    [x + side / 2, y],
    [x, y + side * DELTA_HEIGHT],
  ];
  pen.line(corners, LAYERS.revisions, true);
  const size = Math.min(pen.lettering.sizes.small, side / 2 / CAP);
  // A long mark is lettered smaller: what stands in a delta must not run over its sides.
  const width = pen.lettering.width(number, size, 'bold');
  const fitting = number.length > 2 ? Math.min(size, (size * 0.7 * side) / width) : size;
  pen.text(number, [x, centred(y + side * 0.3, fitting)], { size: fitting, weight: 'bold', anchor: 'middle' });
}

/** A delta as high as a line of small lettering, from its left foot. */
export function drawSmallDelta(pen: Pen, [x, y]: Point2, number: string): void {
  const side = smallDelta(pen.lettering);
  pen.onLayer('revisions', () => drawDelta(pen, [x + side / 2, y], number, side));
}

/** Side of such a delta, points. */
export const smallDelta = ({ sizes }: Pick<Lettering, 'sizes'>): number => 1.25 * sizes.small;
