import { toSite } from '../../routing/site/to-site.ts';
import { applyEdit, type Edit, isIdle } from './change/edit.ts';
import { editErrors } from './change/edit-errors.ts';
import { afterTurn, type History } from './change/history.ts';
import { stillThere, touchedBy } from './change/selection.ts';
import type { DocumentActions, LastChange } from './document-state.ts';
import { FIELD_ONLY, isFieldWork, keepsDrawing } from './field-work.ts';
import { type OpenDocument, past, shownPart } from './open-document.ts';

const WATCHING = 'This site is being edited in another tab. Take it over to edit it here.';

type Editing = Pick<
  DocumentActions,
  'apply' | 'applyLarge' | 'preview' | 'commitPreview' | 'cancelPreview' | 'undo' | 'redo'
>;

/** The actions that change the document: edits done, previewed under the hand, taken back and done again. */
export function editing(document: OpenDocument): Editing {
  const { set, get, emit, warm } = document;
  const preview: Editing['preview'] = (edit) => {
    if (edit === null || isIdle(edit)) {
      if (get().previewed !== undefined) set({ ...shownPart(document.history.file), previewed: undefined });
      return;
    }
    if (refused(document, edit)) return;
    set({ ...shownPart(applyEdit(document.history.file, edit)), previewed: edit });
  };
  const cancelPreview = (): void => preview(null);
  const apply: Editing['apply'] = (edit) => {
    if (isIdle(edit) || refused(document, edit)) return false;
    const next = afterTurn(document.history, 'do', edit);
    const [error] = editErrors(next.file, edit);
    if (error) {
      cancelPreview();
      set({ notice: `${edit.name}: not done. ${error.place}: ${error.says}.` });
      return false;
    }
    const { previewed, file } = get();
    move(document, edit === previewed ? { ...next, file } : next, 'done', edit);
    emit({ what: 'do', edit, history: document.history });
    return true;
  };
  return {
    apply,
    applyLarge: async (edit) => {
      const before = document.history;
      const next = afterTurn(before, 'do', edit).file;
      if (isIdle(edit) || refused(document, edit) || editErrors(next, edit).length > 0) return apply(edit);
      await warm(toSite(next), (done, of) => set({ busy: { what: edit.name, done, of } }));
      set({ busy: undefined });
      return document.history === before && apply(edit);
    },
    preview,
    commitPreview: () => {
      const edit = get().previewed;
      return edit !== undefined && apply(edit);
    },
    cancelPreview,
    undo: () => {
      cancelPreview();
      const edit = document.history.done.at(-1);
      if (!edit || refused(document, edit)) return;
      move(document, afterTurn(document.history, 'undo', edit), 'undone', edit);
      emit({ what: 'undo', edit, history: document.history });
    },
    redo: () => {
      cancelPreview();
      const edit = document.history.undone.at(-1);
      if (!edit || refused(document, edit)) return;
      move(document, afterTurn(document.history, 'redo', edit), 'redone', edit);
      emit({ what: 'redo', edit, history: document.history });
    },
  };
}

/** Whether an edit, done or taken back, may not be made now; then it is told why. */
function refused({ history, get, set }: OpenDocument, edit: Edit): boolean {
  const watching = get().keeping.kind === 'watching';
  if (!watching && (!keepsDrawing(get()) || isFieldWork(history.file, edit))) return false;
  set({ notice: watching ? WATCHING : FIELD_ONLY });
  return true;
}

/** Puts the document after an edit in place. */
function move(document: OpenDocument, next: History, how: LastChange['how'], edit: Edit): void {
  const { set, get } = document;
  const view = next.file === get().file ? {} : shownPart(next.file);
  document.history = next;
  const refs = stillThere(next.file, touchedBy(edit));
  set({
    ...view,
    ...past(document),
    previewed: undefined,
    notice: undefined,
    selection: stillThere(next.file, get().selection),
    lastChange: { how, name: edit.name, refs },
  });
}
