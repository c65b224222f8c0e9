import type { DocumentStore } from '../document/store.ts';
import type { PageStore } from '../page-state/page-store.ts';
import { takesText } from '../parts/keys-to-board.ts';
import { takeField } from '../parts/typed.ts';

/** Keys that work wherever the focus is; in a field only those that a field does not use itself. */
export function attachPageKeys(store: DocumentStore, page: PageStore): () => void {
  const down = (event: KeyboardEvent): void => {
    const typing = takesText(event.target);
    const { undo, redo, pick } = store.getState();
    if (event.ctrlKey || event.metaKey) {
      const key = event.key.toLowerCase();
      if (key === 's') void saveTyped(store, event.shiftKey);
      else if (key === 'o' && !event.shiftKey) {
        takeField();
        void pick();
      } else if (typing) return;
      else if (key === 'z' && event.shiftKey) redo();
      else if (key === 'z') undo();
      else if (key === 'y' && !event.shiftKey) redo();
      else return;
      event.preventDefault();
      return;
    }
    if (typing) return;
    if (event.key === '?') {
      event.preventDefault();
      page.setState({ help: true });
    }
  };
  window.addEventListener('keydown', down);
  return () => window.removeEventListener('keydown', down);
}

/** Saves with what is being typed; what the field would not take is told, for the file does not have it. */
async function saveTyped(store: DocumentStore, as: boolean): Promise<void> {
  const untaken = takeField();
  const { save, notify } = store.getState();
  if ((await save({ as })) && untaken !== null) {
    notify(`Saved without what stands in “${untaken}”, which cannot be taken as it is.`);
  }
}
