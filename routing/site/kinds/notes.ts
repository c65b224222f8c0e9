import * as v from 'valibot';
import type { Box } from '../../plane/box.ts';
import type { Point2 } from '../../plane/point.ts';
import { filledText, id, maybe, point2, told } from '../schema/schema-parts.ts';
import { flat, type KindDocs, type Of, type PlacedKind } from './kind.ts';

export const noteSchema = v.strictObject({
  id,
  at: told(point2, 'Left end of the base line of its first line.'),
  text: told(filledText, 'Lines end where it has line ends, and where they would be long.'),
  to: maybe(told(point2, 'What it points at.')),
});

export type Note = Of<typeof noteSchema>;

export const notes: PlacedKind<typeof noteSchema> = {
  schema: noteSchema,
  one: 'note',
  many: 'notes',
  anyOne: 'a note',
  alsoCalled: ({ text }) => text,
  moved: (note, { point }) => ({ ...note, at: point(note.at), ...(note.to && { to: point(note.to) }) }),
  points: ({ at, to }) => (to ? [at, to] : [at]),
  shape: 'point',
  remark: true,
  parts: {
    of: ({ at, to }) => [{ part: { kind: 'text' }, at }, ...(to ? [{ part: { kind: 'tip' }, at: to }] : [])],
    moved: (note, { kind }, move) =>
      kind === 'text' ? { ...note, at: flat(move, note.at) } : { ...note, ...(note.to && { to: flat(move, note.to) }) },
    without: ({ to, ...note }, parts) => (parts.some(({ kind }) => kind === 'text') ? null : note),
  },
};

export const noteDocs: KindDocs<typeof noteSchema> = {
  says: 'Words on the plan, with leaders.',
  examples: [{ id: 'N1', at: [30.5, 44], text: 'Panel by the owner\nverify height', to: [20, 40.25] }],
};

/** Height of its capitals and from line to line, feet: 3/32 in. at 1/8 in. = 1 ft. */
export const NOTE_LETTER = 0.75;
export const NOTE_LINE = 1.25;
/** Letters to a line. */
const LINE_LETTERS = 36;
/** Width of a letter as a share of the height of capitals; on the wide side. */
const LETTER_WIDTH = 0.8;

/** The lines of a note's text. */
export function noteLines(text: string): readonly string[] {
  return text.split(/\r\n|\r|\n/).flatMap((paragraph) => {
    const lines: string[] = [];
    for (const word of paragraph.split(' ')) {
      const last = lines.at(-1);
      if (last !== undefined && last.length + 1 + word.length <= LINE_LETTERS)
        lines[lines.length - 1] = `${last} ${word}`;
      else lines.push(word);
    }
    return lines;
  });
}

/** About where a note's text lies, feet. */
export function noteBox({ at: [x, y], text }: Note): Box {
  const lines = noteLines(text);
  const width = Math.max(...lines.map(({ length }) => length)) * LETTER_WIDTH * NOTE_LETTER;
  return { minX: x, maxX: x + width, minY: y - (lines.length - 1) * NOTE_LINE - 0.2, maxY: y + NOTE_LETTER };
}

/** From the nearer side of a note's text to what it points at; null where it points at nothing. */
export function noteLeader(note: Note): readonly [from: Point2, to: Point2] | null {
  const { at, to } = note;
  if (!to) return null;
  const { minX, maxX } = noteBox(note);
  const y = at[1] + NOTE_LETTER / 2;
  return [[to[0] < (minX + maxX) / 2 ? minX - 0.3 : maxX + 0.3, y], to];
}

/** Length of the head of a leader, feet. */
const HEAD = 0.9;

/** The head of a leader, slim, its tip where the leader ends. */
export function arrowHead([from, tip]: readonly [from: Point2, tip: Point2]): readonly Point2[] {
  const away = Math.hypot(tip[0] - from[0], tip[1] - from[1]);
  if (away === 0) return [tip];
  const [ux, uy] = [(tip[0] - from[0]) / away, (tip[1] - from[1]) / away];
  const beside = (side: number): Point2 => [
    tip[0] - HEAD * ux - (side * HEAD * uy) / 5,
    tip[1] - HEAD * uy + (side * HEAD * ux) / 5,
  ];
  return [tip, beside(1), beside(-1)];
}
