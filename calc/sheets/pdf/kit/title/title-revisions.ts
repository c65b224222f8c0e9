import type { Project } from '../../../../../routing/site/site.ts';
import { type Area, INCH, right, top } from '../area.ts';
import type { Job } from '../draft.ts';
import { GREY, PENS } from '../ink.ts';
import { shortened, wrapped } from '../lettering/lines-of-text.ts';
import { centred, type Pen } from '../pen.ts';
import { PURPOSE_WORDS, stampOf } from '../purpose.ts';
import { drawDelta } from '../revision/delta.ts';
import { changeWords } from '../revision/revised.ts';
import { PAD, rule } from './title-kit.ts';

const REVISION_ROWS = 6;
type Issue = NonNullable<Project['issues']>[number];

/** Height over the signatures that stays free for a seal, points: 2 in, as most are across. */
export const SEAL = 2 * INCH;
/** Size of the words of the stamp. */
const stampSize = ({ shape, lettering: { sizes } }: Pick<Job, 'shape' | 'lettering'>): number =>
  shape.titleBlock.width > 200 ? sizes.head : sizes.note;
/** From the top of its room to the words of what the set is for. */
const purposeDown = (size: number): number => 24 + 3.4 * size;
/** What the words of the stamp take above the room for a seal. */
export const stampHeight = (job: Pick<Job, 'shape' | 'lettering' | 'site'>): number =>
  job.site.drawings.purpose === undefined ? 64 : Math.max(64, purposeDown(stampSize(job)) + 8);
/** What the lines to sign on take below it. */
export const SIGNED = 3 * 24 + 4;
export const REVISION_HEIGHT = (REVISION_ROWS + 2) * 17;

/** The words that keep the sheet from being built from, over room for a stamp; what is left under it. */
export function drawStampRoom(pen: Pen, room: Area, job: Job): Area {
  const { site } = job;
  const { sizes } = pen.lettering;
  const { purpose } = site.drawings;
  const lines = stampOf(site.drawings);
  const middle = room.x + room.width / 2;
  const size = stampSize(job);
  pen.text(lines[0], [middle, top(room) - 8 - size], { size, weight: 'bold', anchor: 'middle' });
  pen.text(lines[1], [middle, top(room) - 10 - 2.2 * size], { size: sizes.note, anchor: 'middle' });
  if (purpose !== undefined)
    pen.text(PURPOSE_WORDS[purpose].title.toUpperCase(), [middle, top(room) - purposeDown(size)], {
      size: sizes.note,
      weight: 'bold',
      anchor: 'middle',
    });
  const bottom = room.y + REVISION_HEIGHT;
  rule(pen, room, bottom);
  drawSignatureLines(pen, room, bottom);
  return { ...room, height: REVISION_HEIGHT };
}

/** Lines to sign and date on, under the room for a seal. */
function drawSignatureLines(pen: Pen, room: Area, bottom: number): void {
  const { small } = pen.lettering.sizes;
  ['Seal', 'Signature', 'Date'].forEach((word, i, all) => {
    const y = bottom + 8 + (all.length - 1 - i) * 24;
    pen.text(word, [room.x + PAD, y], { size: small, colour: GREY });
    if (i === 0) return;
    const from = room.x + PAD + pen.lettering.width('Signature', small) + 6;
    pen.line(
      [
        [from, y],
        [right(room) - PAD, y],
      ],
      PENS.thin,
    );
  });
}

/** A ruled table for revisions: the one that the set is, and room to write in those that follow. */
export function drawRevisions(pen: Pen, room: Area, block: Area, { revision, date, site }: Job): void {
  const { sizes } = pen.lettering;
  const row = room.height / (REVISION_ROWS + 2);
  const size = sizes.small;
  const dated = Math.max(54, pen.lettering.width(date, size) + 9);
  const columns = [block.x, block.x + 26, block.x + 26 + dated];
  pen.text('REVISIONS', [block.x + PAD, centred(top(room) - row / 2, size)], { size, weight: 'bold' });
  rule(pen, block, top(room) - row);
  ['No.', 'Date', 'Description'].forEach((word, i) => {
    const width = (columns[i + 1] ?? right(block)) - columns[i]!;
    const fitting = shortened(word, width - 6, size, pen.lettering);
    pen.text(fitting, [columns[i]! + 4, centred(top(room) - 1.5 * row, size)], { size });
  });
  for (let i = 2; i <= REVISION_ROWS + 1; i++)
    pen.line(
      [
        [block.x, top(room) - i * row],
        [right(block), top(room) - i * row],
      ],
      PENS.thin,
    );
  // The last issues, as far as there is room beside the revision that the set is.
  const isRevision = (issue: Issue): boolean =>
    issue.mark === revision?.number && issue.date === revision.date && issue.text === revision.text;
  const issues = (site.project.issues ?? [])
    .filter((issue) => !isRevision(issue))
    .slice(revision ? 2 - REVISION_ROWS : -REVISION_ROWS);
  const base = (line: number): number => centred(top(room) - (2.5 + line) * row, size);
  issues.forEach(({ mark, date: when, text }, i) => {
    [mark, when, text].forEach((word, column) => {
      const width = (columns[column + 1] ?? right(block)) - columns[column]!;
      pen.text(shortened(word, width - 6, size, pen.lettering), [columns[column]! + 4, base(i)], { size });
    });
  });
  if (revision) {
    const first = issues.length;
    drawDelta(pen, [columns[0]! + 13, top(room) - (3 + first) * row + 2], revision.number);
    const when = shortened(revision.date, dated - 6, size, pen.lettering);
    pen.text(when, [columns[1]! + 4, base(first)], { size });
    const told = `${revision.text === null ? '' : `${revision.text}. `}Since ${revision.since}: ${changeWords(revision.changes)}`;
    const width = right(block) - columns[2]! - 8;
    wrapped(told, width, size, pen.lettering, { most: REVISION_ROWS - first }).forEach((words, line) => {
      pen.text(words, [columns[2]! + 4, base(first + line)], { size });
    });
  }
  for (const x of columns.slice(1))
    pen.line(
      [
        [x, room.y],
        [x, top(room) - row],
      ],
      PENS.thin,
    );
}
