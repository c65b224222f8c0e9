/** The keys go back to the board; false where there is none, or where a dialog has them. */
export function keysToBoard(): boolean {
  const board = document.querySelector<HTMLElement>('.board-paper');
  if (!board || document.querySelector('dialog[open]')) return false;
  board.focus({ preventScroll: true });
  return true;
}

/** For a button beside the board: whoever pressed it by hand goes on with the keys of the board. */
export const afterPress = ({ detail }: { readonly detail: number }): void => {
  if (detail > 0) keysToBoard();
};

const TEXT = 'textarea, select, input:not([type=checkbox], [type=radio], [type=range], [type=file])';

/** Whether letters that are typed here are text, or choose from a list. */
export const takesText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || target.matches(TEXT));

const ALSO: ReadonlySet<string> = new Set(['Escape', 'Delete', 'Backspace']);

/**
 * Letters, figures and signs mean on a button, a tick or the open page what they mean on the board: pressing a button
 * does not take the keys away. What the control itself uses (Enter, Space, Tab, arrows) stays its own.
 */
export function attachKeysToBoard(): () => void {
  const down = (event: KeyboardEvent): void => {
    const { key, code, shiftKey, target } = event;
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    if (key === ' ' || (key.length !== 1 && !ALSO.has(key)) || takesText(target)) return;
    if (target instanceof Element && target.closest('.board-paper, .menu, [role=menu], dialog')) return;
    const board = document.querySelector<HTMLElement>('.board-paper');
    if (!board || document.querySelector('dialog[open]')) return;
    const had = document.activeElement;
    const own = new KeyboardEvent('keydown', { key, code, shiftKey, bubbles: true, cancelable: true });
    if (board.dispatchEvent(own)) return;
    event.preventDefault();
    // What the key has opened may have the keys by now.
    if (document.activeElement === had) keysToBoard();
  };
  window.addEventListener('keydown', down);
  return () => window.removeEventListener('keydown', down);
}
