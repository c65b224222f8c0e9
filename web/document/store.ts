import { createStore, type StoreApi } from 'zustand/vanilla';
import { type History, newHistory } from './change/history.ts';
import { stillThere } from './change/selection.ts';
import type { DocumentEvent, DocumentState, Keeping, Opening } from './document-state.ts';
import { editing } from './editing.ts';
import { fileDoor } from './files/files.ts';
import { type DocumentWorld, type OpenDocument, past, shownPart } from './open-document.ts';
import { emptySite, opening, putInPlace } from './opening.ts';
import { saving } from './saving.ts';
import { telling } from './telling.ts';
import { warm } from './warm-up.ts';

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

/**
 * The open document: the site file, what the engine makes of it, what is selected, and the ways to change it.
 * `plan` is memoised on the identity of the parts of the site, so each state's plan is that of its file.
 */
export function createDocumentStore(world: Partial<DocumentWorld> = {}): DocumentStore {
  const listeners = new Set<(event: DocumentEvent) => void>();
  const document: OpenDocument = {
    ...{ files: world.files ?? fileDoor(), warm: world.warm ?? warm },
    ...{ history: newHistory(emptySite()), own: { savedAt: null }, opening: 0 },
    set: (part) => store.setState(part),
    get: () => store.getState(),
    emit: (event) => {
      for (const listener of listeners) listener(event);
    },
  };
  const store: StoreApi<DocumentState> = createStore(() => ({
    ...shownPart(document.history.file),
    ...past(document),
    ...{ selection: [], alerts: [], keeping: { kind: 'off' }, station: 'layout', opened: 0 },
    ...opening(document),
    ...editing(document),
    ...telling(document),
    save: saving(document),
  }));

  return Object.assign(store, {
    listen: (listener: (event: DocumentEvent) => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    resume: (next: History, from: Opening & { readonly inFile: boolean }) => putInPlace(document, next, from),
    follow: (next: History) => {
      document.history = next;
      const selection = stillThere(next.file, store.getState().selection);
      store.setState({ ...shownPart(next.file), ...past(document), selection, previewed: undefined });
    },
    setKeeping: (keeping: Keeping) => store.setState({ keeping }),
  });
}
