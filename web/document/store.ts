import { createStore, type StoreApi } from 'zustand/vanilla';
import { plan } from '../../calc/plan/plan.ts';
import { readSite } from '../../routing/site/read.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { writeSite } from '../../routing/site/write.ts';
import type {
  DocumentActions,
  DocumentData,
  DocumentEvent,
  DocumentState,
  Keeping,
  LastChange,
  Opening,
} from './document-state.ts';
import { applyEdit, type Edit, isIdle } from './edit.ts';
import { editErrors } from './edit-errors.ts';
import { FIELD_ONLY, isFieldWork, keepsDrawing } from './field-work.ts';
import { type FileDoor, fileDoor, fileNameOf } from './files.ts';
import { type History, newHistory, turned } from './history.ts';
import { changedSays, fileAfter, type OwnState, ownFileOf, savedSays } from './own-file.ts';
import { selected, stillThere, touchedBy } from './selection.ts';
import { isSiteBundle } from './site-bundle.ts';
import { type Warm, warm } from './warm.ts';

/** What the store needs of the world outside it. */
export interface DocumentWorld {
  readonly files: FileDoor;
  readonly warm: Warm;
}

export interface DocumentStore extends StoreApi<DocumentState> {
  /** Tells a listener of every change of the document from now on; returns the way to stop. */
  readonly listen: (listener: (event: DocumentEvent) => void) => () => void;
  /** Puts a document in place with its past, as the keeping of the site found it. Listeners do not hear of it. */
  readonly resume: (history: History, opening: Opening & { readonly inFile: boolean }) => Promise<boolean>;
  /** Puts a newer state of the same document in place, as another tab made it. Listeners do not hear of it. */
  readonly follow: (history: History) => void;
  /** Says how the browser keeps the site. While another tab writes it, edits are refused. */
  readonly setKeeping: (keeping: Keeping) => void;
}

/** A document with nothing on it. */
export const emptySite = (name = 'New site'): SiteFile => ({ format: 'overrow/site', version: 1, units: 'ft', name });

const WATCHING = 'This site is being edited in another tab. Take it over to edit it here.';

/**
 * The open document: the site file, what the engine makes of it, what is selected, and the ways to change it.
 * `plan` is memoised on the identity of the parts of the site, so each state's plan is that of its file.
 */
export function createDocumentStore(world: Partial<DocumentWorld> = {}): DocumentStore {
  const { files = fileDoor(), warm: warmUp = warm } = world;
  const listeners = new Set<(event: DocumentEvent) => void>();
  const emit = (event: DocumentEvent): void => {
    for (const listener of listeners) listener(event);
  };

  let history = newHistory(emptySite());
  // The document is in its file when the newest edit at the time of the last save is the newest again.
  let own: OwnState = { savedAt: null };
  let opening = 0;

  const savedNow = (): DocumentData['saved'] => ({
    inFile: own.savedAt !== null && own.savedAt.edit === history.done.at(-1),
    ...(own.fileName !== undefined && { fileName: own.fileName }),
    ...(own.sent && { sent: true }),
  });
  const shown = (file: SiteFile): Pick<DocumentData, 'file' | 'site' | 'plan' | 'name'> => {
    const site = toSite(file);
    return { file, site, plan: plan(site), name: file.name };
  };
  const past = (): Pick<DocumentData, 'undoName' | 'redoName' | 'saved'> => ({
    undoName: history.done.at(-1)?.name,
    redoName: history.undone.at(-1)?.name,
    saved: savedNow(),
  });

  const store = createStore<DocumentState>((set, get) => {
    /** Whether an edit, done or taken back, may not be made now; then it is told why. */
    const refused = (edit: Edit): boolean => {
      const watching = get().keeping.kind === 'watching';
      if (!watching && (!keepsDrawing(get()) || isFieldWork(history.file, edit))) return false;
      set({ notice: watching ? WATCHING : FIELD_ONLY });
      return true;
    };
    const move = (next: History, how: LastChange['how'], edit: Edit): void => {
      const view = next.file === get().file ? {} : shown(next.file);
      history = next;
      const refs = stillThere(next.file, touchedBy(edit));
      set({
        ...view,
        ...past(),
        previewed: undefined,
        notice: undefined,
        selection: stillThere(next.file, get().selection),
        lastChange: { how, name: edit.name, refs },
      });
    };

    const actions: DocumentActions = {
      open: async (text, openedName, place = null, stamp) => {
        if (isSiteBundle(text)) {
          set({ notice: `${openedName ?? 'This'} is a file of kept sites: read it back under Open, Kept work.` });
          return false;
        }
        const read = readSite(text);
        if (!read.ok) {
          const title = `${openedName ?? 'The site file'} was not opened`;
          set({ problems: { title, errors: read.errors } });
          return false;
        }
        const from = openedName === undefined ? {} : { fileName: openedName, place, ...(stamp && { stamp }) };
        return actions.openFile(read.file, from);
      },
      openFile: async (file, from = {}) => {
        const next = newHistory(file);
        const opened = await putInPlace(next, { ...from, inFile: from.fileName !== undefined });
        if (opened) emit({ what: 'open', history: next, ...ownFileOf(from) });
        return opened;
      },
      newSite: () => actions.openFile(emptySite()),
      apply: (edit) => {
        if (isIdle(edit) || refused(edit)) return false;
        const next = turned(history, 'do', edit);
        const [error] = editErrors(next.file, edit);
        if (error) {
          actions.cancelPreview();
          set({ notice: `${edit.name}: not done. ${error.place}: ${error.says}.` });
          return false;
        }
        const { previewed, file } = get();
        move(edit === previewed ? { ...next, file } : next, 'done', edit);
        emit({ what: 'do', edit, history });
        return true;
      },
      applyLarge: async (edit) => {
        const before = history;
        const next = turned(before, 'do', edit).file;
        if (isIdle(edit) || refused(edit) || editErrors(next, edit).length > 0) return actions.apply(edit);
        await warmUp(toSite(next), (done, of) => set({ busy: { what: edit.name, done, of } }));
        set({ busy: undefined });
        return history === before && actions.apply(edit);
      },
      preview: (edit) => {
        if (edit === null || isIdle(edit)) {
          if (get().previewed !== undefined) set({ ...shown(history.file), previewed: undefined });
          return;
        }
        if (refused(edit)) return;
        set({ ...shown(applyEdit(history.file, edit)), previewed: edit });
      },
      commitPreview: () => {
        const edit = get().previewed;
        return edit !== undefined && actions.apply(edit);
      },
      cancelPreview: () => actions.preview(null),
      undo: () => {
        actions.cancelPreview();
        const edit = history.done.at(-1);
        if (!edit || refused(edit)) return;
        move(turned(history, 'undo', edit), 'undone', edit);
        emit({ what: 'undo', edit, history });
      },
      redo: () => {
        actions.cancelPreview();
        const edit = history.undone.at(-1);
        if (!edit || refused(edit)) return;
        move(turned(history, 'redo', edit), 'redone', edit);
        emit({ what: 'redo', edit, history });
      },
      select: (refs, mode = 'replace') => {
        const selection = selected(get().selection, stillThere(get().file, refs), mode);
        if (selection !== get().selection) set({ selection });
      },
      setStation: (station) => set({ station }),
      save: async (options = {}) => {
        const turn = opening;
        const { file } = history;
        const edit = history.done.at(-1);
        const name = own.fileName ?? fileNameOf(file.name);
        const place = options.as === true ? null : (own.place ?? null);
        const saved = await files.save(writeSite(file), name, place, options.over === true ? undefined : own.stamp);
        if (saved.kind === 'failed') set({ notice: `The file was not saved: ${saved.says}` });
        if (saved.kind === 'changed') {
          const acts = [
            { name: 'Overwrite it', act: () => void actions.save({ over: true }) },
            { name: 'Save under another name…', act: () => void actions.save({ as: true }) },
          ];
          actions.warn({ says: changedSays(saved.fileName), acts });
        }
        if (saved.kind !== 'saved' && saved.kind !== 'sent') return false;
        // Another document may have been opened while the dialog stood.
        if (turn !== opening) return true;
        const written = fileAfter(saved);
        own = { ...written, savedAt: { edit } };
        set({ saved: savedNow(), notice: savedSays(saved) });
        emit({ what: 'saved', ...written, history });
        return true;
      },
      pick: async () => {
        const picked = await files.pick();
        if (picked.kind === 'failed') set({ notice: `The file was not read: ${picked.says}` });
        return picked.kind === 'picked'
          ? actions.open(picked.text, picked.fileName, picked.place, picked.stamp)
          : false;
      },
      notify: (notice) => set({ notice: notice ?? undefined }),
      warn: (alert) => set({ alerts: [...get().alerts.filter(({ says }) => says !== alert.says), alert] }),
      unwarn: (says) => set({ alerts: get().alerts.filter((alert) => alert.says !== says) }),
      dismissProblems: () => set({ problems: undefined }),
      committed: () => history,
    };

    return {
      ...shown(history.file),
      ...past(),
      selection: [],
      alerts: [],
      keeping: { kind: 'off' },
      station: 'layout',
      opened: 0,
      ...actions,
    };
  });

  /** Works out the plan in slices and puts the document in place; false where another came in between. */
  async function putInPlace(next: History, from: Opening & { readonly inFile: boolean }): Promise<boolean> {
    opening += 1;
    const turn = opening;
    await warmUp(toSite(next.file), (done, of) => {
      if (turn === opening) store.setState({ busy: { what: `Working out the plan of ${next.file.name}`, done, of } });
    });
    if (turn !== opening) return false;
    const view = shown(next.file);
    history = next;
    own = { ...ownFileOf(from), savedAt: from.inFile ? { edit: next.done.at(-1) } : null };
    store.setState({
      ...view,
      ...past(),
      selection: [],
      previewed: undefined,
      lastChange: undefined,
      problems: undefined,
      // What was said while the page was opened (that a site was lost, say) stands beside the first document.
      notice: from.notice ?? (store.getState().opened === 0 ? store.getState().notice : undefined),
      busy: undefined,
      opened: store.getState().opened + 1,
    });
    return true;
  }

  return Object.assign(store, {
    listen: (listener: (event: DocumentEvent) => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    resume: putInPlace,
    follow: (next: History) => {
      history = next;
      const selection = stillThere(next.file, store.getState().selection);
      store.setState({ ...shown(next.file), ...past(), selection, previewed: undefined });
    },
    setKeeping: (keeping: Keeping) => store.setState({ keeping }),
  });
}
