import { type Box, boxesMeet } from '../../../../../routing/plane/box.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import { counted } from '../../../../../routing/words/counted.ts';
import type { Revision } from '../../../../plan/compared/revision.ts';
import { rangesOf } from '../../../../words/ranges.ts';
import { LAYERS } from '../../../drawing/layers.ts';
import { cloudOutline } from '../../../drawing/revision-clouds.ts';
import { type Area, MM, right, top } from '../area.ts';
import type { SetRevision } from '../draft.ts';
import { BLACK, type Ink } from '../ink.ts';
import type { LabelGround, LabelWish } from '../labels/best-label-place.ts';
import { placesAround } from '../labels/label-places.ts';
import type { Pen } from '../pen.ts';
import type { View } from '../view/view.ts';
import { DELTA, drawDelta } from './delta.ts';

/** Length of a scallop of a cloud, points. */
const SCALLOP = 4.5 * MM;
const INK: Ink = LAYERS.revisions;

/** What the cover says of a revision. */
export const revisedRemark = ({ number, since, changes }: Pick<SetRevision, 'number' | 'since' | 'changes'>): string =>
  `Revision ${number} of ${since}: ${changeWords(changes)}. Clouds with a delta stand on the plans round what changed, and round the place of what is gone; a delta stands beside each row and note that reads otherwise than before. All changes are listed in the schedules.`;

/** `3 elements added, 1 moved; 5 quantities`. */
export function changeWords({ elements, quantities }: Revision): string {
  const counts = (['added', 'removed', 'moved', 'changed'] as const).flatMap((change) => {
    const count = elements.filter((one) => one.change === change).length;
    return count === 0 ? [] : [`${count} ${change}`];
  });
  const many = counted(quantities.length, 'quantity', 'quantities');
  return `${counts.length === 0 ? 'no element' : `elements: ${counts.join(', ')}`}; ${many}`;
}

/** Draws the clouds that a view shows, each with its delta; nothing is written over those. */
export function drawClouds(pen: Pen, view: View, ground: LabelGround, revision: SetRevision | undefined): void {
  if (!revision) return;
  pen.onLayer('revisions', () => {
    for (const box of revision.areas) {
      const [low, high] = [view.at([box.minX, box.minY]), view.at([box.maxX, box.maxY])];
      const sheet: Box = { minX: low[0], minY: low[1], maxX: high[0], maxY: high[1] };
      pen.clipped(view.area, () => pen.line(cloudOutline(sheet, SCALLOP), INK, true));
      for (const side of sidesOf(sheet)) ground.heavy.take(side);
      const at = deltaPlace(sheet, view.area);
      if (!at) continue;
      drawDelta(pen, at, revision.number);
      ground.hard.take({ x: at[0] - DELTA / 2, y: at[1], width: DELTA, height: DELTA });
    }
  });
}

/** Beside each cloud of a view the lines of the change order that it stands for: `lines 3, 5-9`. */
export function cloudWishes(view: View, revision: SetRevision | undefined): LabelWish[] {
  return (revision?.areas ?? []).flatMap(({ lines, minX, minY, maxX, maxY }): LabelWish[] => {
    if (lines.length === 0 || !boxesMeet({ minX, minY, maxX, maxY }, view.window)) return [];
    const [low, high] = [view.at([minX, minY]), view.at([maxX, maxY])];
    const middle: Point2 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
    const corner: Point2 = [high[0], high[1] + SCALLOP];
    return [
      {
        layer: 'revisions',
        lines: [{ text: `${lines.length === 1 ? 'line' : 'lines'} ${rangesOf(lines)}` }],
        size: 'small',
        colour: BLACK,
        *places(size) {
          yield* placesAround(corner, DELTA / 2 + 3, size, false);
          yield* placesAround(middle, Math.max(high[0] - low[0], high[1] - low[1]) / 2 + SCALLOP, size, true, {
            leader: corner,
          });
        },
      },
    ];
  });
}

/** The four strips that the scallops of a cloud fill. */
function sidesOf({ minX, minY, maxX, maxY }: Box): readonly Area[] {
  const deep = SCALLOP / 2;
  const [width, height] = [maxX - minX, maxY - minY];
  return [
    { x: minX, y: minY - deep, width, height: deep },
    { x: minX, y: maxY, width, height: deep },
    { x: minX - deep, y: minY, width: deep, height },
    { x: maxX, y: minY, width: deep, height },
  ];
}

/** Above the upper right corner of a cloud, within the view; null where nothing of the cloud lies in it. */
function deltaPlace({ minX, minY, maxX, maxY }: Box, area: Area): Point2 | null {
  if (maxX < area.x || minX > right(area) || maxY < area.y || minY > top(area)) return null;
  const x = Math.min(maxX, right(area) - DELTA);
  const y = Math.min(maxY + SCALLOP / 2 + 1, top(area) - DELTA);
  return [Math.max(x, area.x + DELTA), Math.max(y, area.y)];
}
