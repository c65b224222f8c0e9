import { kept } from '../../../routing/kept/kept.ts';
import { boxOf, joinedBox } from '../../../routing/plane/box.ts';
import {
  arrowHead,
  NOTE_LETTER,
  NOTE_LINE,
  type Note,
  noteBox,
  noteLeader,
  noteLines,
} from '../../../routing/site/kinds/notes.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Action } from '../draw/draft.ts';
import { lettering, namePx } from '../painting/ink.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine, traceOutline } from '../pictures/outline.ts';
import { toSegment } from '../scene/near.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface NoteMark extends ElementMark<'notes'> {
  readonly note: Note;
  readonly lines: readonly string[];
  readonly leader: readonly [from: Point2, to: Point2] | null;
  /** The corners of its text. */
  readonly corners: readonly Point2[];
}

const markOf = kept((note: Note): NoteMark => {
  const box = noteBox(note);
  const { minX, minY, maxX, maxY } = box;
  const corners: readonly Point2[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  const leader = noteLeader(note);
  const all = leader ? joinedBox(box, boxOf(leader)) : box;
  return { list: 'notes', id: note.id, note, lines: noteLines(note.text), leader, corners, ...all };
});

/** Height of capitals as a share of the size of the lettering. */
const CAPITALS = 0.7;

/** Notes as they stand on paper, lettered no smaller than names are. */
function drawNotes(pen: BoardPen, frame: Frame, marks: readonly NoteMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  const px = Math.max(namePx(scale), (NOTE_LETTER * scale) / CAPITALS);
  const step = Math.max(px * 1.2, NOTE_LINE * scale);
  pen.strokeStyle = ink.ink;
  pen.fillStyle = ink.ink;
  for (const { leader } of marks) {
    if (!leader) continue;
    pen.lineWidth = chosen ? 2 : 1;
    pen.beginPath();
    traceLine(pen, frame, leader);
    pen.stroke();
    pen.beginPath();
    traceOutline(pen, frame, arrowHead(leader));
    pen.fill();
  }
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  pen.font = lettering(px);
  pen.lineJoin = 'round';
  pen.lineWidth = 3.5;
  pen.strokeStyle = ink.paper;
  for (const { note, lines } of marks)
    for (const [i, words] of lines.entries()) {
      const x = left + note.at[0] * scale;
      const y = top - note.at[1] * scale + i * step;
      pen.strokeText(words, x, y);
      pen.fillText(words, x, y);
    }
}

export const notes: BoardKind<'notes', NoteMark> = {
  mark: markOf,
  keptClear: true,
  pictures: [{ name: 'notes', over: 260, from: 1.4, draw: drawNotes }],
  hold: {
    rank: 35,
    tour: 92,
    rides: true,
    named: true,
    outline: ({ corners }) => corners,
    distance: ({ corners: [low, , high], leader }, at) => {
      const [[minX, minY], [maxX, maxY]] = [low!, high!];
      const toText = Math.hypot(Math.max(0, minX - at[0], at[0] - maxX), Math.max(0, minY - at[1], at[1] - maxY));
      return leader ? Math.min(toText, toSegment(at, ...leader)) : toText;
    },
  },
  // Beside its text, which is read while it is moved.
  handle: ({ kind }) => ({ shape: kind === 'text' ? 'round' : 'square', aside: kind === 'text' ? [-14, 6] : [0, 0] }),
  aims: ({ id, note: { at, to } }, { end }) => {
    end(at, `note ${id}`);
    if (to) end(to, `tip of ${id}`);
  },
};

export interface NoteOptions {
  readonly text: string;
  /** It points at something, which is pressed first. */
  readonly points: boolean;
}

export const noteAction: Action<NoteOptions> = {
  name: 'Note',
  key: 'L',
  draws: 'a note',
  first: { text: 'Note', points: true },
};
