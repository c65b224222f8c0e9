import type { Project } from '../../../../routing/site/site.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { CAUTIONS } from '../../../words/cautions.ts';
import { type Area, INCH, right, top } from './area.ts';
import type { Job } from './draft.ts';
import { GREY, PENS } from './ink.ts';
import { drawKeynote, type Keynote, keynoteSize } from './keynotes.ts';
import type { Lettering } from './lettering.ts';
import { LEADING } from './letters.ts';
import { shortened, wrapped } from './lines-of-text.ts';
import { centred, type Pen, penWith, type TextStyle } from './pen.ts';
import { PURPOSE_WORDS, stampOf } from './purpose.ts';
import { changeWords, drawDelta } from './revised.ts';

/** What a title block says of its sheet. */
export interface SheetWords {
  readonly number: string;
  readonly title: string;
  readonly scale: string;
  /** `3 of 12`. */
  readonly place: string;
}

const PAD = 8;
const REVISION_ROWS = 6;

/** The border of a sheet and the title block down its right side. */
export function drawTitleBlock(pen: Pen, job: Job, words: SheetWords, keynotes: readonly Keynote[] = []): void {
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
  const lines = keynotes.map((one) => keynoteLines(one, block, pen.lettering));
  drawKeynotes(pen, keynoteRoom(rest, keynotesHeight(lines, pen.lettering)), keynotes, lines);
  drawRevisions(pen, drawStampRoom(pen, rest, job), block, job);
  pen.rectangle(frame, PENS.border);
}

/** Height over the signatures that stays free for a seal, points: 2 in, as most are across. */
const SEAL = 2 * INCH;
/** What the words of the stamp and the lines to sign on take above and below it. */
const STAMP_WORDS = 64;
const SIGNED = 3 * 24 + 4;
const REVISION_HEIGHT = (REVISION_ROWS + 2) * 17;

/** The keynotes of a sheet for which its title block has room over that for the seal, from the first. */
export function keynotesListed(job: Job, words: SheetWords, keynotes: readonly Keynote[]): readonly Keynote[] {
  if (keynotes.length === 0) return keynotes;
  const { titleBlock: block } = job.shape;
  const pen = penWith(job.lettering);
  const foot = drawNames(pen, block, job, words);
  const height = drawProject(pen, block, job) - foot - STAMP_WORDS - SEAL - SIGNED - REVISION_HEIGHT;
  const lines = keynotes.map((one) => keynoteLines(one, block, job.lettering));
  let count = keynotes.length;
  while (count > 0 && keynotesHeight(lines.slice(0, count), job.lettering) > height) count--;
  return keynotes.slice(0, count);
}

const INDENT = 20;
const keynoteLines = ({ says }: Keynote, { width }: Area, lettering: Lettering): readonly string[] =>
  wrapped(says, width - 2 * PAD - INDENT, lettering.sizes.small, lettering);

/** Height of the list with its head. */
function keynotesHeight(lines: readonly (readonly string[])[], { sizes }: Lettering): number {
  if (lines.length === 0) return 0;
  const each = (one: readonly string[]): number =>
    Math.max(keynoteSize(sizes.note) + 2, one.length * sizes.small * LEADING + 4);
  return 2 * sizes.note + lines.reduce((sum, one) => sum + each(one), 0) + 6;
}

/** Where the list stands: under the words of the stamp, over the room for the seal. */
const keynoteRoom = (rest: Area, height: number): Area => ({ ...rest, y: top(rest) - STAMP_WORDS - height, height });

function drawKeynotes(pen: Pen, room: Area, keynotes: readonly Keynote[], lines: readonly (readonly string[])[]): void {
  if (keynotes.length === 0) return;
  const { small, note } = pen.lettering.sizes;
  rule(pen, room, top(room));
  let y = top(room) - 1.4 * note;
  pen.text('KEYNOTES', [room.x + PAD, y], { size: note, weight: 'bold' });
  y -= 0.6 * note;
  keynotes.forEach(({ number }, i) => {
    const own = lines[i]!;
    const height = Math.max(keynoteSize(note) + 2, own.length * small * LEADING + 4);
    drawKeynote(pen, [room.x + PAD + 8, y - height / 2], number, note);
    const first = y - (height - own.length * small * LEADING) / 2;
    paragraph(pen, room.x + PAD + INDENT, first, own, { size: small });
    y -= height;
  });
  rule(pen, room, room.y);
}

/** Rule across the block. */
function rule(pen: Pen, block: Area, y: number): void {
  pen.line(
    [
      [block.x, y],
      [right(block), y],
    ],
    PENS.plain,
  );
}

/** Lines of text under one another from a height; the height under the last. */
function paragraph(pen: Pen, x: number, y: number, lines: readonly string[], style: TextStyle): number {
  let base = y;
  for (const line of lines) {
    base -= style.size * LEADING;
    pen.text(line, [x, base], style);
  }
  return base;
}

/** From the foot up: number, title, then the facts. */
function drawNames(pen: Pen, block: Area, job: Job, { number, title, scale, place }: SheetWords): number {
  const { lettering, site, date, file } = job;
  const { sizes } = lettering;
  const x = block.x + PAD;
  const width = block.width - 2 * PAD;
  let y = block.y + PAD;
  const size = Math.min(
    sizes.number,
    (sizes.number * width) / Math.max(width, lettering.width(number, sizes.number, 'bold')),
  );
  pen.text(number, [x, y + 4], { size, weight: 'bold' });
  y += size * 0.7 + 16;
  pen.text(`Sheet ${place}`, [x, y], { size: sizes.small });
  y += 18;
  rule(pen, block, y);
  const { size: titleSize, lines } = titleLines(title.toUpperCase(), width, lettering);
  y += 8 + lines.length * titleSize * LEADING;
  paragraph(pen, x, y, lines, { size: titleSize, weight: 'bold' });
  y += 8;
  rule(pen, block, y);
  const facts: readonly (readonly [string, string])[] = [
    ['Scale', scale],
    ['Date', date],
    ['Code edition', tablesOf(site.rules).edition],
    ['Drawn from', file],
    ...(['drawn', 'checked'] as const).flatMap((role): [string, string][] => {
      const by = site.project[role];
      return by === undefined ? [] : [[role === 'drawn' ? 'Drawn by' : 'Checked by', by]];
    }),
  ];
  const isNarrow = block.width < 200;
  const indent = isNarrow ? 0 : 84;
  for (const [name, value] of [...facts].reverse()) {
    const size = sizes.note;
    const lines = wrapped(value, width - indent, size, lettering, { most: 2 });
    const height = Math.max(1, lines.length) * size * LEADING + 7 + (isNarrow ? sizes.small * LEADING : 0);
    pen.text(name, [x, y + height - (isNarrow ? sizes.small : size) * LEADING], { size: sizes.small });
    paragraph(pen, x + indent, y + height - (isNarrow ? sizes.small * LEADING : 0), lines, { size });
    y += height;
    rule(pen, block, y);
  }
  return y;
}

/** Lines of a title, four at most as large as titles are; one that is longer in smaller letters, and none is cut short. */
export function titleLines(
  title: string,
  width: number,
  lettering: Lettering,
): { readonly size: number; readonly lines: readonly string[] } {
  const { sizes } = lettering;
  const tried = [sizes.title, sizes.head, sizes.note].filter((size, i, all) => i === 0 || size < all[0]!);
  for (const size of tried) {
    const lines = wrapped(title, width, size, lettering, { weight: 'bold' });
    if (lines.length <= 4 || size === tried.at(-1)) return { size, lines };
  }
  throw new RangeError('a sheet has no size for titles');
}

/** From the top down: the project and the cautions. */
function drawProject(pen: Pen, block: Area, { lettering, site }: Job): number {
  const { sizes } = lettering;
  const x = block.x + PAD;
  const width = block.width - 2 * PAD;
  const nameSize = sizes.title;
  const name = wrapped(site.name, width, nameSize, lettering, { most: 4, weight: 'bold' });
  let y = paragraph(pen, x, top(block) - PAD, name, { size: nameSize, weight: 'bold' });
  y = paragraph(pen, x, y - 4, ['EV charging drops: electrical'], { size: sizes.small });
  const told = projectLines(site.project).flatMap((line) => wrapped(line, width, sizes.small, lettering, { most: 2 }));
  y = paragraph(pen, x, told.length > 0 ? y - 4 : y, told, { size: sizes.small }) - 10;
  rule(pen, block, y);
  const cautions = wrapped(CAUTIONS, width, sizes.small, lettering);
  y = paragraph(pen, x, y - 3, cautions, { size: sizes.small }) - 9;
  rule(pen, block, y);
  return y;
}

/** What the file says of the job, a line each; nothing where it says nothing. */
function projectLines({ number, client, address, jurisdiction, phase }: Project): readonly string[] {
  return [
    ...(number === undefined ? [] : [`Project ${number}`]),
    ...(client === undefined ? [] : [`For ${client}`]),
    ...(address === undefined ? [] : [address]),
    ...(jurisdiction === undefined ? [] : [`Authority: ${jurisdiction}`]),
    ...(phase === undefined ? [] : [phase]),
  ];
}

/** The words that keep the sheet from being built from, over room for a stamp; what is left under it. */
function drawStampRoom(pen: Pen, room: Area, { site }: Job): Area {
  const { sizes } = pen.lettering;
  const { purpose } = site.drawings;
  const lines = stampOf(site.drawings);
  const middle = room.x + room.width / 2;
  const size = room.width > 200 ? sizes.head : sizes.note;
  pen.text(lines[0], [middle, top(room) - 8 - size], { size, weight: 'bold', anchor: 'middle' });
  pen.text(lines[1], [middle, top(room) - 10 - 2.2 * size], { size: sizes.note, anchor: 'middle' });
  if (purpose !== undefined)
    pen.text(PURPOSE_WORDS[purpose].title.toUpperCase(), [middle, top(room) - 24 - 3.4 * size], {
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
function drawRevisions(pen: Pen, room: Area, block: Area, { revision, date, site }: Job): void {
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
  const issues = (site.project.issues ?? []).slice(revision ? 2 - REVISION_ROWS : -REVISION_ROWS);
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
    pen.text(date, [columns[1]! + 4, base(first)], { size });
    const told = `Since ${revision.since}: ${changeWords(revision.changes)}`;
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
