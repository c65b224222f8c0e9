import { textOf } from './files/files.ts';
import type { DocumentStore } from './store.ts';

/**
 * Opens the site file that is dropped on a page, and tells of one being dragged over it. Returns the way to stop.
 * A drop of several opens the first. What the page lets others catch (an underlay) is left to them: a listener that has
 * called `preventDefault` before.
 */
export function openDroppedFiles(page: Document, store: DocumentStore, over: (isOver: boolean) => void): () => void {
  const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
  const dragged = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    over(true);
  };
  const left = (event: DragEvent): void => {
    if (event.relatedTarget === null) over(false);
  };
  const dropped = (event: DragEvent): void => {
    over(false);
    const file = event.dataTransfer?.files[0];
    if (!file || event.defaultPrevented) return;
    event.preventDefault();
    void openFileOf(store, file);
  };
  page.addEventListener('dragover', dragged);
  page.addEventListener('dragleave', left);
  page.addEventListener('drop', dropped);
  return () => {
    page.removeEventListener('dragover', dragged);
    page.removeEventListener('dragleave', left);
    page.removeEventListener('drop', dropped);
  };
}

/** Opens a file that came by another way than the dialog. False where it cannot be read or is invalid. */
export async function openFileOf(store: DocumentStore, file: File): Promise<boolean> {
  try {
    return await store.getState().open(await textOf(file), file.name);
  } catch (error) {
    store.getState().notify(`${file.name} was not read: ${error instanceof Error ? error.message : String(error)}`);
    return false;
  }
}
