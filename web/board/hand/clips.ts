import { insertedBy } from '../../document/change/selection.ts';
import { paste, readClip, writeClip } from '../../document/clipboard.ts';
import { deleteElements } from '../../document/edits/delete.ts';
import type { HandWorld } from './hand-world.ts';

const TYPED = ['INPUT', 'TEXTAREA', 'SELECT'];

/** In a field, or with text marked, copy and paste are of text. */
const isOfText = (): boolean =>
  TYPED.includes(window.document.activeElement?.tagName ?? '') || window.getSelection()?.isCollapsed === false;

/** Copies, cuts and pastes elements through the system's clipboard, so that they go from one tab to another. */
export function attachClips({ document, view }: Pick<HandWorld, 'document' | 'view'>): () => void {
  const copy = (event: ClipboardEvent): boolean => {
    const { file, selection } = document.getState();
    if (selection.length === 0 || isOfText()) return false;
    event.preventDefault();
    event.clipboardData?.setData('text/plain', writeClip(file, selection));
    return true;
  };
  const cut = (event: ClipboardEvent): void => {
    if (!copy(event)) return;
    const { file, selection, apply } = document.getState();
    apply(deleteElements(file, selection));
  };
  const put = (event: ClipboardEvent): void => {
    if (isOfText()) return;
    const read = readClip(event.clipboardData?.getData('text/plain') ?? '');
    if (!read) return;
    event.preventDefault();
    const { file, notify, apply, select } = document.getState();
    if (!read.ok) {
      notify(read.says);
      return;
    }
    const edit = paste(file, read.clip, view.getState().pointer ?? undefined);
    if (apply(edit)) select(insertedBy(edit));
  };
  const stop = new AbortController();
  const { signal } = stop;
  window.addEventListener('copy', copy, { signal });
  window.addEventListener('cut', cut, { signal });
  window.addEventListener('paste', put, { signal });
  return () => stop.abort();
}
