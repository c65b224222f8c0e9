import type { Drawing } from '../../drawing/drawing.ts';
import { drawMoved } from '../as-built/moved-on-plan.ts';
import type { LabelGround } from '../kit/best-label-place.ts';
import { drawDimensions } from '../kit/dimension.ts';
import type { Job } from '../kit/draft.ts';
import type { SheetKeynotes } from '../kit/keynotes.ts';
import { writeLabels } from '../kit/labels.ts';
import type { Pen } from '../kit/pen.ts';
import { cloudWishes, drawClouds } from '../kit/revised.ts';
import { drawUnderlays } from '../kit/underlay.ts';
import type { View } from '../kit/view.ts';
import { drawBasePlan, takeStaying } from './base-plan.ts';
import { writeConduitTags } from './conduit-tags.ts';
import { drawFeeders, feederWishes } from './feeders-on-plan.ts';
import { drawGridlines } from './gridlines-on-view.ts';
import { markKeynotes } from './keynotes.ts';
import {
  aisleWishes,
  dropWishes,
  equipmentWishes,
  labelGround,
  openingWishes,
  sectionWishes,
  stallWishes,
} from './plan-labels.ts';
import { PLAN_NOTES } from './plan-notes.ts';
import { settingOutStrings } from './setting-out-strings.ts';
import { workingSpaceStrings } from './working-space-strings.ts';

/** What stands under a plan from which drops are set out. */
export const FULL_NOTES: readonly string[] = [
  'Dimensions are to the middle of boxes and retractors. A figure that is not shown for want of room is in the setting-out schedule, which governs: strings are rounded one by one.',
  'Beside each drop: its number, then panel and spaces of its circuits behind the colors of their lines.',
  'Beside each conduit: its name in the conduit schedule and its size, a number in brackets where several alike lie side by side. A name that has no room here is on the run strips.',
  ...PLAN_NOTES.slice(0, 1),
];

/** A plan with all that it can say: drops with their circuits, dimensions from gridlines, boxes, conduits. */
export function drawInFull(
  pen: Pen,
  job: Job,
  drawing: Drawing,
  view: View,
  { keynotes, before }: { readonly keynotes?: SheetKeynotes; readonly before?: (ground: LabelGround) => void } = {},
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
    ...sectionWishes(view, site),
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
  ]);
  for (const { string, figures } of workingSpaceStrings(view, site, ground, pen.lettering))
    drawDimensions(pen, string, figures);
}
