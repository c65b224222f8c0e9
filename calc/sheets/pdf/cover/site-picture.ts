import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, right } from '../kit/area.ts';
import type { Job } from '../kit/draft.ts';
import { writeLabels } from '../kit/labels/labels.ts';
import type { Pen } from '../kit/pen.ts';
import { drawNorthArrow } from '../kit/view/north-arrow.ts';
import { drawScaleBar } from '../kit/view/scale-bar.ts';
import { scaleThatFits } from '../kit/view/scales.ts';
import { grown, sizeOf, viewIn } from '../kit/view/view.ts';
import { drawViewTitle, FOOT } from '../kit/view/view-title.ts';
import { drawBasePlan } from '../plans/base-plan.ts';
import { boundaryWishes } from '../plans/boundary-labels.ts';
import { labelGround } from '../plans/label-ground.ts';
import { drawnExtent } from '../plans/plan-sheet.ts';

/** What the picture of the site leaves to the plans: words, distances, what calls other sheets. */
const ON_PLANS: ReadonlySet<string> = new Set(['sections', 'dimensions']);

/**
 * The whole site, small, with the names of what bounds it: streets, property and easement lines as far as the site has
 * them, its scale and its north.
 */
export function drawSitePicture(pen: Pen, room: Area, { site, plan }: Job, drawing: Drawing): void {
  const foot: Area = { ...room, height: FOOT };
  const area: Area = { ...room, y: room.y + FOOT, height: room.height - FOOT };
  const window = grown(drawnExtent(drawing), 6);
  const scale = scaleThatFits(site.units, sizeOf(window), area);
  const view = viewIn(area, window, scale);
  drawBasePlan(pen, view, {
    items: drawing.items.filter(({ kind, layer }) => kind !== 'text' && !ON_PLANS.has(layer)),
  });
  writeLabels(pen, area, labelGround(view, site, plan), boundaryWishes(view, site));
  const after = drawViewTitle(
    pen,
    foot,
    '1',
    site.boundaries.length > 0 ? 'Site and what bounds it' : 'Site',
    scale.says,
  );
  if (right(foot) - after > 400) {
    drawScaleBar(pen, [after + 30, foot.y + 28], view.perFoot, site.units);
    drawNorthArrow(pen, [after + 295, foot.y + 32], site);
  } else if (right(foot) - after > 120) drawNorthArrow(pen, [after + 40, foot.y + 32], site);
}
