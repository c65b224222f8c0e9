import { inPlan } from '../../../../routing/plane/space.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { LAYERS } from '../../drawing/layers.ts';
import type { Job } from '../kit/draft.ts';
import { BLACK, type Ink } from '../kit/ink.ts';
import type { LabelGround, LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAround } from '../kit/labels/label-places.ts';
import { writeLabels } from '../kit/labels/labels.ts';
import type { Pen } from '../kit/pen.ts';
import { shows, type View } from '../kit/view/view.ts';
import { movedPlaces } from './built-lot.ts';

/** Half of the cross where something is drawn, points. */
const CROSS = 4;
const INK: Ink = LAYERS.revisions;
const DASHED: Ink = { ...INK, dash: [1, 0.8] };

/** What stands under a plan of an as-built set. */
export const MOVED_NOTE =
  'As built: everything stands where it was measured, else where it is drawn. A dashed line runs from a cross, where it is drawn, to where it was measured, with how far that is in space.';

/** On the plan of a lot as built: a cross where each measured thing is drawn, and how far from there it stands. */
export function drawMoved(
  pen: Pen,
  view: View,
  { site, record }: Pick<Job, 'site' | 'record'>,
  ground: LabelGround,
): void {
  if (!record) return;
  const seen = movedPlaces(record.drawn.site, site).filter(({ drawn }) => shows(view.window, inPlan(drawn)));
  if (seen.length === 0) return;
  pen.clipped(view.area, () =>
    pen.onLayer('revisions', () => {
      for (const { drawn, built } of seen) {
        const [from, to] = [view.at(inPlan(drawn)), view.at(inPlan(built))];
        pen.line([from, to], DASHED);
        const [x, y] = from;
        pen.lines(
          [
            [
              [x - CROSS, y - CROSS],
              [x + CROSS, y + CROSS],
            ],
            [
              [x - CROSS, y + CROSS],
              [x + CROSS, y - CROSS],
            ],
          ],
          INK,
        );
        ground.hard.take({ x: x - CROSS, y: y - CROSS, width: 2 * CROSS, height: 2 * CROSS });
      }
    }),
  );
  writeLabels(
    pen,
    view.area,
    ground,
    seen.map(
      ({ of, drawn, away }): LabelWish => ({
        layer: 'revisions',
        lines: [{ text: `${of} ${printLength(away, site.units)} off`, weight: 'bold' }],
        size: 'small',
        colour: BLACK,
        places: (size) => placesAround(view.at(inPlan(drawn)), CROSS + 2, size, true),
      }),
    ),
  );
}
