import { takesText } from '../board/keys-to-board.ts';
import type { ViewStore } from '../board/view-store.ts';
import type { DocumentStore } from '../document/store.ts';

/** Keys that work wherever the focus is; in a field only those that a field does not use itself. */
export function attachPageKeys(store: DocumentStore, view: ViewStore): () => void {
  const down = (event: KeyboardEvent): void => {
    const typing = takesText(event.target);
    const { undo, redo, save, pick } = store.getState();
    if (event.ctrlKey || event.metaKey) {
      const key = event.key.toLowerCase();
      if (key === 's') void save({ as: event.shiftKey });
      else if (key === 'o' && !event.shiftKey) void pick();
      else if (typing) return;
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
      view.setState({ help: true });
    }
  };
  window.addEventListener('keydown', down);
  return () => window.removeEventListener('keydown', down);
}
