import type { Drawing } from '../../drawing/drawing.ts';
import { drawMoved } from '../as-built/moved-on-plan.ts';
import type { Job, SheetNumbers } from '../kit/draft.ts';
import type { LabelGround } from '../kit/labels/best-label-place.ts';
import { drawDimensions } from '../kit/labels/dimension.ts';
import { writeLabels } from '../kit/labels/labels.ts';
import type { Pen } from '../kit/pen.ts';
import { cloudWishes, drawClouds } from '../kit/revision/revised.ts';
import type { SheetKeynotes } from '../kit/title/keynotes.ts';
import { drawUnderlays } from '../kit/underlay.ts';
import type { View } from '../kit/view/view.ts';
import { drawBasePlan, takeStaying } from './base-plan.ts';
import { boundaryWishes } from './boundary-labels.ts';
import { writeConduitTags } from './conduit-tags.ts';
import { areaWishes } from './enlarged/area-labels.ts';
import { drawFeeders, feederWishes } from './feeders-on-plan.ts';
import { markKeynotes } from './keynotes.ts';
import { labelGround } from './label-ground.ts';
import { aisleWishes, dropWishes, equipmentWishes, openingWishes, stallWishes } from './plan-labels.ts';
import { sectionWishes } from './section-labels.ts';
import { drawGridlines } from './strings/gridlines-on-view.ts';
import { settingOutStrings } from './strings/setting-out-strings.ts';
import { workingSpaceStrings } from './strings/working-space-strings.ts';
import { workingSpaceWords } from './strings/working-space-words.ts';

/** What a plan has beside what its site and view give it. */
interface InFull {
  readonly keynotes?: SheetKeynotes;
  /** What it calls other sheets and their views by. */
  readonly numbers?: SheetNumbers;
  readonly before?: (ground: LabelGround) => void;
}

/** A plan with all that it can say: drops with their circuits, dimensions from gridlines, boxes, conduits. */
export function drawInFull(
  pen: Pen,
  job: Job,
  drawing: Drawing,
  view: View,
  { keynotes, numbers, before }: InFull = {},
): void {
  const { site, plan } = job;
  drawUnderlays(pen, job.underlays, view);
  drawGridlines(pen, view, site);
  drawFeeders(pen, view, site);
  drawBasePlan(pen, view, drawing);
  const ground = labelGround(view, site, plan);
  takeStaying(ground, view, drawing, pen.lettering);
  drawClouds(pen, view, ground, job.revision);
  drawMoved(pen, view, job, ground);
  before?.(ground);
  const equipment = writeLabels(pen, view.area, ground, [
    ...cloudWishes(view, job.revision),
    ...equipmentWishes(view, site),
    ...sectionWishes(view, site, numbers),
  ]);
  for (const { string, figures } of settingOutStrings(view, site, ground, pen.lettering))
    drawDimensions(pen, string, figures);
  writeLabels(pen, view.area, ground, [...equipment, ...dropWishes(view, site, plan, true)]);
  writeConduitTags(pen, view.area, ground, view, plan.conduits);
  if (keynotes) markKeynotes(pen, view.area, ground, view, keynotes);
  writeLabels(pen, view.area, ground, [
    ...feederWishes(view, site),
    ...openingWishes(view, site, plan),
    ...stallWishes(view, site, pen.lettering),
    ...aisleWishes(view, site),
    ...areaWishes(view, site),
    ...boundaryWishes(view, site),
  ]);
  const spaces = workingSpaceStrings(view, site, ground, pen.lettering);
  for (const { string, figures } of spaces) drawDimensions(pen, string, figures);
  writeLabels(pen, view.area, ground, workingSpaceWords(view, site, spaces));
}
