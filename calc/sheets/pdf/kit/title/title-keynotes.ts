import { type Area, right, top } from '../area.ts';
import type { Job } from '../draft.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { LEADING } from '../lettering/letters.ts';
import { wrapped } from '../lettering/lines-of-text.ts';
import { type Pen, penWith } from '../pen.ts';
import { drawDelta } from '../revision/delta.ts';
import { drawKeynote, type Keynote, keynoteSize } from './keynotes.ts';
import type { SheetWords } from './title-block.ts';
import { PAD, rule, setParagraph } from './title-kit.ts';
import { drawNames, drawProject } from './title-names.ts';
import { REVISION_HEIGHT, SEAL, SIGNED, stampHeight } from './title-revisions.ts';

/** The keynotes of a sheet for which its title block has room over that for the seal, from the first. */
export function keynotesListed(job: Job, words: SheetWords, keynotes: readonly Keynote[]): readonly Keynote[] {
  if (keynotes.length === 0) return keynotes;
  const { titleBlock: block } = job.shape;
  const pen = penWith(job.lettering);
  const foot = drawNames(pen, block, job, words);
  const height = drawProject(pen, block, job) - foot - stampHeight(job) - SEAL - SIGNED - REVISION_HEIGHT;
  const lines = keynotes.map((one) => keynoteLines(one, job));
  let count = keynotes.length;
  while (count > 0 && keynotesHeight(lines.slice(0, count), job.lettering) > height) count--;
  return keynotes.slice(0, count);
}

/** From a number in its hexagon to its words, points. */
const AFTER = 6;
const indentOf = ({ sizes }: Lettering): number => keynoteSize(sizes.note) + AFTER;
/** Room right of the words for a delta. */
const DELTA_ROOM = 14;

export const keynoteLines = (
  { says }: Keynote,
  { shape: { titleBlock }, lettering, revision }: Pick<Job, 'shape' | 'lettering' | 'revision'>,
): readonly string[] => {
  const width = titleBlock.width - 2 * PAD - indentOf(lettering) - (revision ? DELTA_ROOM : 0);
  return wrapped(says, width, lettering.sizes.small, lettering);
};

/** Height of the list with its head. */
export function keynotesHeight(lines: readonly (readonly string[])[], { sizes }: Lettering): number {
  if (lines.length === 0) return 0;
  const each = (one: readonly string[]): number =>
    Math.max(keynoteSize(sizes.note) + 2, one.length * sizes.small * LEADING + 4);
  return 2 * sizes.note + lines.reduce((sum, one) => sum + each(one), 0) + 6;
}

/** Where the list stands: under the words of the stamp, over the room for the seal. */
export const keynoteRoom = (rest: Area, height: number, job: Job): Area => ({
  ...rest,
  y: top(rest) - stampHeight(job) - height,
  height,
});

export function drawKeynotes(
  pen: Pen,
  room: Area,
  keynotes: readonly Keynote[],
  lines: readonly (readonly string[])[],
  deltas?: { readonly number: string; readonly at: ReadonlySet<number> },
): void {
  if (keynotes.length === 0) return;
  const { small, note } = pen.lettering.sizes;
  rule(pen, room, top(room));
  let y = top(room) - 1.4 * note;
  pen.text('KEYNOTES', [room.x + PAD, y], { size: note, weight: 'bold' });
  y -= 0.6 * note;
  keynotes.forEach(({ number }, i) => {
    const own = lines[i]!;
    const height = Math.max(keynoteSize(note) + 2, own.length * small * LEADING + 4);
    drawKeynote(pen, [room.x + PAD + keynoteSize(note) / 2, y - height / 2], number, note);
    const first = y - (height - own.length * small * LEADING) / 2;
    setParagraph(pen, room.x + PAD + indentOf(pen.lettering), first, own, { size: small });
    if (deltas?.at.has(number))
      pen.onLayer('revisions', () =>
        drawDelta(pen, [right(room) - PAD - 4, y - height / 2 - 5], deltas.number, DELTA_ROOM - 2),
      );
    y -= height;
  });
  rule(pen, room, room.y);
}
