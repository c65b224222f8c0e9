import { PDFDocument } from '@cantoo/pdf-lib';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { extentOf } from '../drawing/extent.ts';
import { raisedDrawing } from '../drawing/raised-drawing.ts';
import { type FontBytes, letteringIn } from '../pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../pdf/kit/lettering/letters.ts';
import { sheetShape } from '../pdf/kit/paper.ts';
import { letterRaised, wholeRaised } from '../pdf/plans/raised-sheet.ts';
import type { LetteredPlan } from './lettered-plan.ts';
import { placedMarks } from './placed-marks.ts';
import { recordingPen } from './recording-pen.ts';

const PAPER = 'ANSI D';

/** The raised view of a whole site, its names where the drawing set would find room for them. Feet. */
export async function letteredRaised(
  site: Site,
  plan: Plan,
  fonts: FontBytes,
): Promise<Pick<LetteredPlan, 'drawing' | 'marks'>> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, fonts, LETTERS[PAPER], [site]);
  const raised = raisedDrawing(site, plan);
  const view = wholeRaised(site, sheetShape(PAPER), raised);
  const pen = recordingPen(lettering, { plan: true, gridlines: true });
  letterRaised(pen, view, raised);
  const { minX, minY } = view.window;
  const marks = placedMarks(pen.marks, {
    at: ([x, y]) => [minX + x / view.perFoot, minY + y / view.perFoot],
    perPoint: 1 / view.perFoot,
    turn: 0,
  });
  const items = raised.items.filter(({ kind }) => kind !== 'text');
  return { drawing: { title: raised.title, items, extent: extentOf(items) }, marks };
}
