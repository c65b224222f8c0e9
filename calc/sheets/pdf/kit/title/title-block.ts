import { type Area, top } from '../area.ts';
import type { Job } from '../draft.ts';
import { PENS } from '../ink.ts';
import type { Pen } from '../pen.ts';
import type { Keynote } from './keynotes.ts';
import { drawKeynotes, keynoteLines, keynoteRoom, keynotesHeight } from './title-keynotes.ts';
import { drawNames, drawProject } from './title-names.ts';
import { drawRevisions, drawStampRoom } from './title-revisions.ts';

/** What a title block says of its sheet. */
export interface SheetWords {
  readonly number: string;
  readonly title: string;
  readonly scale: string;
  /** `3 of 12`. */
  readonly place: string;
  /** The sheet that lists the keynotes for which there is no room beside the plan. */
  readonly keynotesOn?: string;
}

/**
 * The border of a sheet and the title block down its right side, with the keynotes of its plan; beside those that a revision
 * changed stands a delta.
 */
export function drawTitleBlock(
  pen: Pen,
  job: Job,
  words: SheetWords,
  keynotes: readonly Keynote[] = [],
  changed: ReadonlySet<number> = new Set(),
): void {
  const { frame, titleBlock: block } = job.shape;
  pen.line(
    [
      [block.x, block.y],
      [block.x, top(block)],
    ],
    PENS.heavy,
  );
  const foot = drawNames(pen, block, job, words);
  const head = drawProject(pen, block, job);
  const rest: Area = { ...block, y: foot, height: head - foot };
  const lines = keynotes.map((one) => keynoteLines(one, job));
  const deltas = job.revision && { number: job.revision.number, at: changed };
  drawKeynotes(pen, keynoteRoom(rest, keynotesHeight(lines, pen.lettering), job), keynotes, lines, deltas);
  drawRevisions(pen, drawStampRoom(pen, rest, job), block, job);
  pen.rectangle(frame, PENS.border);
}
