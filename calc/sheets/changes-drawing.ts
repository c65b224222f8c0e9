import type { Alternative } from '../plan/comparison.ts';
import type { Revision } from '../plan/revision.ts';
import type { Drawing } from './drawing/drawing.ts';
import { extentOf } from './drawing/extent.ts';
import { planDrawing } from './drawing/plan-drawing.ts';
import { revisionClouds } from './drawing/revision-clouds.ts';

/** The plan drawing of the later version with a cloud round everything that the revision changed. */
export function changesDrawing(before: Alternative, after: Alternative, { elements }: Revision, number = '1'): Drawing {
  const drawing = planDrawing(after.site, after.plan);
  const items = [...drawing.items, ...revisionClouds(before.site, after.site, elements, number)];
  return { title: `${drawing.title}: changes`, items, extent: extentOf(items) };
}
