import { newId } from '../../../../routing/site/new-id.ts';
import { addElements } from '../../../document/edits/add.ts';
import type { NoteOptions } from '../../kinds/notes.ts';
import { type DrawTool, lineOf, spotsOf } from '../draft.ts';

const plainNote: DrawTool<NoteOptions> = {
  shape: 'point',
  atOnce: true,
  list: 'notes',
  edit: ({ file }, draft, { text }) => {
    const [spot] = spotsOf(draft);
    return spot ? addElements(file, 'notes', [{ id: newId(file, 'N'), at: spot.at, text }]) : null;
  },
  words: () => [],
  advice: () => ({
    action: 'Note',
    next: 'Press where its text begins.',
    keys: [
      ['Alt', 'no snapping'],
      ['Esc', 'select'],
    ],
  }),
};

/** A note by the place of its text, what it points at pressed first. */
export const noteTool: DrawTool<NoteOptions> = {
  ...plainNote,
  shape: 'line',
  edit: ({ file }, draft, { text }) => {
    const line = lineOf(draft);
    return line ? addElements(file, 'notes', [{ id: newId(file, 'N'), at: line[1], text, to: line[0] }]) : null;
  },
  advice: (draft) => ({
    action: 'Note',
    next: draft.spots.length === 0 ? 'Press what it points at.' : 'Press where its text begins.',
    keys: [
      ['Alt', 'no snapping'],
      ['Esc', draft.spots.length === 0 ? 'select' : 'throw away'],
    ],
  }),
  instead: ({ points }) => (points ? null : plainNote),
};
