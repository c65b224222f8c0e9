import type { SiteFile } from '../../../routing/site/site.ts';
import { applyEdit, type Edit, invertEdit } from './edit.ts';

/** A document with its past and its undone future. The newest edit stands last in both lists. */
export interface History {
  readonly file: SiteFile;
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

/** Gestures that can be taken back before the oldest is forgotten. */
const MAX_DONE = 1000;

export const newHistory = (file: SiteFile): History => ({ file, done: [], undone: [] });

/** The history after a new edit; what had been undone is gone. */
const did = ({ file, done }: History, edit: Edit): History => ({
  file: applyEdit(file, edit),
  done: [...done, edit].slice(-MAX_DONE),
  undone: [],
});

/** The history after taking back its last edit, which is given: a past read from a store may not reach back to it. */
const undid = ({ file, done, undone }: History, edit: Edit): History => ({
  file: applyEdit(file, invertEdit(edit)),
  done: done.slice(0, -1),
  undone: [...undone, edit],
});

/** The history after doing its last undone edit, which is given, again. */
const redid = ({ file, done, undone }: History, edit: Edit): History => ({
  file: applyEdit(file, edit),
  done: [...done, edit].slice(-MAX_DONE),
  undone: undone.slice(0, -1),
});

const AFTER = { do: did, undo: undid, redo: redid } as const;

/** What happened to a document. */
export type HistoryTurn = keyof typeof AFTER;

/** The history after a turn. Throws RangeError where the edit does not fit the file. */
export const afterTurn = (history: History, turn: HistoryTurn, edit: Edit): History => AFTER[turn](history, edit);

/** The newest edits of a list, as many as make up at most so many steps. */
export function newestEdits(edits: readonly Edit[], maxSteps: number): readonly Edit[] {
  let steps = 0;
  let from = edits.length;
  while (from > 0) {
    steps += edits[from - 1]!.steps.length;
    if (steps > maxSteps) break;
    from -= 1;
  }
  return edits.slice(from);
}

/** Whether the whole past can be taken back and the whole undone future done again from this file. */
export function pastFits({ file, done, undone }: History): boolean {
  try {
    done.reduceRight((now, edit) => applyEdit(now, invertEdit(edit)), file);
    undone.reduceRight((now, edit) => applyEdit(now, edit), file);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
