import { PDFDocument } from '@cantoo/pdf-lib';
import { kept } from '../../../routing/kept/kept.ts';
import { KINDS } from '../../../routing/site/kinds/kinds.ts';
import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Drawing, DrawnItem } from '../drawing/drawing.ts';
import { extentOf } from '../drawing/extent.ts';
import { lineItem } from '../drawing/items.ts';
import { feederLayer } from '../drawing/layers.ts';
import { planDrawing } from '../drawing/plan-drawing.ts';
import { asBuiltLot } from '../pdf/as-built/built-lot.ts';
import type { Job, SheetFrame } from '../pdf/kit/draft.ts';
import { type FontBytes, letteringIn } from '../pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../pdf/kit/lettering/letters.ts';
import type { Paper } from '../pdf/kit/paper.ts';
import { pointsPerFoot, type Scale } from '../pdf/kit/view/scales.ts';
import { sizeOf, viewIn } from '../pdf/kit/view/view.ts';
import { boundaryDimensions } from '../pdf/plans/boundary-labels.ts';
import { enlargedAreas } from '../pdf/plans/enlarged/enlarged-areas.ts';
import { feedersInPlan } from '../pdf/plans/feeders-on-plan.ts';
import { drawInFull } from '../pdf/plans/plan-in-full.ts';
import { overviewScale, planWindow } from '../pdf/plans/plan-sheet.ts';
import { jobOf, type Revised } from '../pdf/set/set-sheets.ts';
import type { SheetMark } from './mark.ts';
import { type MarkPlacing, placedMarks } from './placed-marks.ts';
import { recordingPen } from './recording-pen.ts';

/** What a caller hands in with a site and its plan. */
export interface LetteredParts {
  readonly fonts: FontBytes;
  readonly date: string;
  /** Name of the site file. */
  readonly file: string;
  /** The version that this one revises, and what it changes in it: clouds stand round that. */
  readonly revision?: Revised;
}

/** A plan with the words, dimensions and clouds of the drawing set, as it lies in the site file. */
export interface LetteredPlan {
  readonly job: Job;
  /** Those that a person drew, and those from new equipment to the boundary. */
  readonly dimensions: Site['dimensions'];
  /** Lines and symbols, and the words that a person put on the plan. Feet. */
  readonly drawing: Drawing;
  /** Words, leaders, dimensions and clouds, feet; white under words, which parts the thin lines that they stand on. */
  readonly marks: readonly SheetMark[];
  /** At which the words are as large as on paper. */
  readonly scale: Scale;
}

const PAPER: Paper = 'ANSI D';

/**
 * The whole plan lettered as its enlarged plans are, or as the plan of the site where no enlarged one follows it: every
 * word has the place that the drawing set would find for it on one sheet as large as the site.
 */
export const letteredPlan = (
  site: Site,
  plan: Plan,
  { fonts, date, file, revision }: LetteredParts,
): Promise<LetteredPlan> => lettered(plan, site, fonts, date, file, revision);

type Asked = readonly [
  plan: Plan,
  site: Site,
  fonts: FontBytes,
  date: string,
  file: string,
  revision: Revised | undefined,
];

/** DXF and SVG are written one after the other, of the same. */
const lettered = kept(async (...[plan, site, fonts, date, file, revision]: Asked): Promise<LetteredPlan> => {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, fonts, LETTERS[PAPER], [site, file, revision?.before]);
  const job = jobOf(site, plan, {
    lettering,
    date,
    paper: PAPER,
    file,
    underlays: [],
    remarks: [],
    ...(revision && { revision }),
  });
  const built = site.drawings.purpose === 'as-built' ? asBuiltLot(site, plan) : { site, plan };
  const laid = planDrawing(job.site, job.plan);
  const scale =
    enlargedAreas(job.site, job.shape, lettering.sizes, laid)?.scale ?? overviewScale(job.site, job.shape, laid);
  const perFoot = pointsPerFoot(scale);
  const window = planWindow(laid);
  const { width, height } = sizeOf(window);
  const view = viewIn({ x: 0, y: 0, width: width * perFoot, height: height * perFoot }, window, scale);
  const pen = recordingPen(lettering, { plan: true, gridlines: true });
  drawInFull(pen, job, laid, view);
  const placing: MarkPlacing = {
    at: ([x, y]) => fromSheet(job.frame, [window.minX + x / perFoot, window.minY + y / perFoot]),
    perPoint: 1 / perFoot,
    turn: job.frame?.rotation ?? 0,
  };
  const dimensions = [...built.site.dimensions, ...boundaryDimensions(built.site)];
  return {
    job,
    dimensions,
    drawing: linesOf({ ...built.site, dimensions, sections: sectionsOfJob(job) }, built.plan),
    marks: placedMarks(pen.marks, placing),
    scale,
  };
});

/** Where a point of the sheets lies on the site. */
export const fromSheet = (frame: SheetFrame, at: Point2): Point2 => (frame === null ? at : offGrid(frame, at));

/** The cuts that the set marks, typical ones among them, as they lie in the site file. */
function sectionsOfJob(job: Job): Site['sections'] {
  const { frame } = job;
  if (frame === null) return job.site.sections;
  return job.site.sections.map((section) =>
    KINDS.sections.moved(section, {
      point: (at) => offGrid(frame, at),
      direction: (degrees) => degrees + (frame.rotation ?? 0),
      lift: 0,
      mirrors: false,
    }),
  );
}

/** The plan as the site file has it, with feeders, without the words that are lettered to fit. */
function linesOf(site: Site, plan: Plan): Drawing {
  const { title, items } = planDrawing(site, plan);
  const feeders = feedersInPlan(site).flatMap(({ feeder, points, isRouted }): DrawnItem[] =>
    isRouted ? [] : [lineItem(feederLayer(feeder), points)],
  );
  const kept = items.filter((item) => item.kind !== 'text' || item.stays || item.layer === 'gridLabels');
  const all = [...kept, ...feeders];
  return { title, items: all, extent: extentOf(all) };
}
