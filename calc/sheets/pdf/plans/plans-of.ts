import { boxOf } from '../../../../routing/plane/box.ts';
import { onGrid } from '../../../../routing/site/place/grid-frame.ts';
import { QUARTER } from '../../../../routing/site/place/site-on-grid.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { planDrawing } from '../../drawing/plan-drawing.ts';
import type { Job } from '../kit/draft.ts';
import { scaleThatFits } from '../kit/view/scales.ts';
import { sizeOf } from '../kit/view/view.ts';
import { LARGEST_RATIO, planRoom, planWindow } from './plan-sheet.ts';
import { turnedOnSheet } from './strings/along-gridlines.ts';

/** A lot is turned on its plans where they are drawn so much larger then. */
const WORTH_TURNING = 1.2;

/** The job that plans are drawn of, and its drawing. */
export interface Plans {
  readonly job: Job;
  readonly drawing: Drawing;
  /** Whether the lot is turned on them. */
  readonly isTurned: boolean;
}

/**
 * What the plans of a job are drawn of: the job itself, or, of a lot that stands upright, the same turned a quarter so that
 * it lies along the paper. Schedules and sections stay as they are: they go by the lot's own gridlines.
 */
export function plansOf(job: Job, drawing: Drawing): Plans {
  const { width, height } = sizeOf(planWindow(drawing));
  const scaleOf = (feet: { readonly width: number; readonly height: number }): number =>
    scaleThatFits(job.site.units, feet, planRoom(job.shape), LARGEST_RATIO).ratio;
  const [upright, along] = [scaleOf({ width, height }), scaleOf({ width: height, height: width })];
  if (upright < along * WORTH_TURNING) return { job, drawing, isTurned: false };
  const laid = turnedOnSheet(job);
  const { revision, record } = job;
  const areas = revision?.areas.map(({ minX, minY, maxX, maxY, lines }) => ({
    ...boxOf([onGrid(QUARTER, [minX, minY]), onGrid(QUARTER, [maxX, maxY])]),
    lines,
  }));
  const turned: Job = {
    ...job,
    ...laid,
    ...(revision && areas && { revision: { ...revision, areas } }),
    ...(record && { record: { ...record, drawn: turnedOnSheet({ ...record.drawn, underlays: [], frame: null }) } }),
  };
  return { job: turned, drawing: planDrawing(turned.site, turned.plan), isTurned: true };
}
