import type { SiteFile } from '../../routing/site/site.ts';
import { applyEdit, type Edit, invertEdit } from './edit.ts';

/** A document with its past and its undone future. The newest edit stands last in both lists. */
export interface History {
  readonly file: SiteFile;
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

/** Gestures that can be taken back before the oldest is forgotten. */
export const MAX_DONE = 1000;

export const newHistory = (file: SiteFile): History => ({ file, done: [], undone: [] });

/** The history after a new edit; what had been undone is gone. */
export function did(history: History, edit: Edit): History {
  const done = [...history.done.slice(Math.max(0, history.done.length - MAX_DONE + 1)), edit];
  return { file: applyEdit(history.file, edit), done, undone: [] };
}

/** The history after taking the last edit back; the same where there is none. */
export function undid(history: History): History {
  const edit = history.done.at(-1);
  if (!edit) return history;
  return {
    file: applyEdit(history.file, invertEdit(edit)),
    done: history.done.slice(0, -1),
    undone: [...history.undone, edit],
  };
}

/** The history after doing the last undone edit again; the same where there is none. */
export function redid(history: History): History {
  const edit = history.undone.at(-1);
  if (!edit) return history;
  return {
    file: applyEdit(history.file, edit),
    done: [...history.done, edit],
    undone: history.undone.slice(0, -1),
  };
}
