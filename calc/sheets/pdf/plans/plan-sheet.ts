import type { Site } from '../../../../routing/site/site.ts';
import { conduitStretches } from '../../drawing/conduit-stretches.ts';
import type { Drawing, DrawnItem, Extent } from '../../drawing/drawing.ts';
import { extentOf } from '../../drawing/extent.ts';
import { lineItem } from '../../drawing/items.ts';
import { drawMoved } from '../as-built/moved-on-plan.ts';
import type { Area } from '../kit/area.ts';
import type { Draft, Job } from '../kit/draft.ts';
import { writeLabels, writeMostOrNone } from '../kit/labels/labels.ts';
import type { SheetShape } from '../kit/paper.ts';
import { cloudWishes, drawClouds } from '../kit/revision/revised.ts';
import { drawUnderlays } from '../kit/underlay.ts';
import { type Scale, scaleThatFits } from '../kit/view/scales.ts';
import { grown, sizeOf, viewIn } from '../kit/view/view.ts';
import { drawPlanFoot, FOOT } from '../kit/view/view-title.ts';
import { drawBasePlan, takeStaying } from './base-plan.ts';
import { boundaryWishes } from './boundary-labels.ts';
import { sizeWish } from './conduit-tags.ts';
import { areaWishes } from './enlarged/area-labels.ts';
import { drawFeeders, feederWishes } from './feeders-on-plan.ts';
import { keynotesIn, keynotesOf } from './keynotes.ts';
import { labelGround } from './label-ground.ts';
import { drawInFull } from './plan-in-full.ts';
import { aisleWishes, dropWishes, equipmentWishes, stallWishes } from './plan-labels.ts';
import { fullNotes, planNotes } from './plan-notes.ts';
import { sectionWishes } from './section-labels.ts';
import { drawGridlines, GRID_GUTTER } from './strings/gridlines-on-view.ts';

/** White round what is drawn, feet. */
const MARGIN = 6;
/** No plan is drawn larger than 1/4 in = 1 ft, or 1:50. */
export const LARGEST_RATIO = 48;

const NUMBERS_APART = 'Numbers of drops and stalls that have no room here are on the enlarged plans.';
/** Where fewer drops or stalls than this share can be numbered, none is. */
const MOST_NUMBERED = 0.85;

/** The room for a plan on a sheet, without its foot and without the gutters of the gridlines. */
export function planRoom({ field }: SheetShape): Area {
  const gutter = GRID_GUTTER;
  return {
    x: field.x + gutter,
    y: field.y + FOOT + 8,
    width: field.width - gutter - 4,
    height: field.height - FOOT - 8 - gutter,
  };
}

export const planFoot = ({ field }: SheetShape): Area => ({ ...field, height: FOOT });

/** What of a site there is to see: all that is drawn but the gridlines; of words the places of notes, which may be far off. */
export function drawnExtent({ items }: Drawing): Extent {
  const shown = items.flatMap((item): readonly DrawnItem[] => {
    if (item.layer === 'gridlines' || item.layer === 'gridLabels') return [];
    if (item.kind !== 'text') return [item];
    return item.layer === 'notes' ? [lineItem('notes', [item.at])] : [];
  });
  return extentOf(shown) ?? { minX: 0, minY: 0, maxX: 60, maxY: 40 };
}

/** What of a site its plan shows, feet. */
export const planWindow = (drawing: Drawing): Extent => grown(drawnExtent(drawing), MARGIN);

/** The scale of the plan of the whole site. */
export const overviewScale = (site: Site, shape: SheetShape, drawing: Drawing): Scale =>
  scaleThatFits(site.units, sizeOf(planWindow(drawing)), planRoom(shape), LARGEST_RATIO);

/**
 * The plan of the whole site with its raceways, equipment and drops, at the largest standard scale that fits: in full
 * where no enlarged plan comes after it.
 */
export function planSheet(job: Job, drawing: Drawing, isInFull: boolean): Draft {
  const { site, plan, shape } = job;
  const scale = overviewScale(site, shape, drawing);
  const view = viewIn(planRoom(shape), planWindow(drawing), scale);
  const title = 'Raceway and drop plan';
  return {
    key: 'plan',
    series: 'E-1',
    title,
    scale: scale.says,
    plan: view,
    ...(isInFull && { keynotes: keynotesIn(keynotesOf(site, plan), view) }),
    draw: (pen, numbers, keynotes) => {
      if (isInFull) {
        drawInFull(pen, job, drawing, view, { numbers, ...(keynotes && { keynotes }) });
        drawPlanFoot(pen, planFoot(shape), view, site, title, fullNotes(job));
        return;
      }
      drawUnderlays(pen, job.underlays, view);
      drawGridlines(pen, view, site);
      drawFeeders(pen, view, site);
      drawBasePlan(pen, view, drawing);
      const ground = labelGround(view, site, plan);
      takeStaying(ground, view, drawing, pen.lettering);
      drawClouds(pen, view, ground, job.revision);
      drawMoved(pen, view, job, ground);
      writeLabels(pen, view.area, ground, [
        ...cloudWishes(view, job.revision),
        ...equipmentWishes(view, site),
        ...sectionWishes(view, site, numbers),
      ]);
      const drops = dropWishes(view, site, plan, false);
      const unnumbered = writeMostOrNone(pen, view.area, ground, drops, MOST_NUMBERED);
      writeLabels(pen, view.area, ground, [
        ...feederWishes(view, site),
        ...aisleWishes(view, site),
        ...areaWishes(view, site),
        ...boundaryWishes(view, site),
        ...conduitStretches(plan.conduits).map((stretch) => sizeWish(view, stretch)),
      ]);
      const stalls = stallWishes(view, site, pen.lettering);
      const bare =
        unnumbered.length < drops.length ? writeMostOrNone(pen, view.area, ground, stalls, MOST_NUMBERED) : stalls;
      const isNumbered = unnumbered.length === 0 && bare.length === 0;
      const notes = [...(isNumbered ? [] : [NUMBERS_APART]), ...planNotes(job)];
      drawPlanFoot(pen, planFoot(shape), view, site, title, notes);
    },
  };
}
