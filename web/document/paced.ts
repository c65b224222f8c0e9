import type { StoreApi } from 'zustand/vanilla';
import type { DocumentState } from './document-state.ts';

/** Milliseconds between what panels and tables say of a drag: as fast as figures can be read. */
export const PACE_MS = 100;

type Followed = Pick<StoreApi<DocumentState>, 'getState' | 'getInitialState' | 'subscribe'>;

/**
 * The document for those who put it in words: every change at once, but of a drag the first step, and then the latest
 * one every 100 ms. The board draws each step; figures that change sixty times a second cannot be read, and writing them
 * would take the time in which the drawing follows the hand.
 */
export function pacedStore(document: Followed): Followed {
  let shown = document.getState();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stop: (() => void) | undefined;
  const listeners = new Set<(state: DocumentState, before: DocumentState) => void>();

  const tell = (): void => {
    clearTimeout(timer);
    timer = undefined;
    const before = shown;
    shown = document.getState();
    if (shown !== before) for (const listener of listeners) listener(shown, before);
  };
  const follow = (state: DocumentState, before: DocumentState): void => {
    const dragging = state.previewed !== undefined && before.previewed !== undefined;
    if (!dragging) tell();
    else timer ??= setTimeout(tell, PACE_MS);
  };

  return {
    getState: () => {
      // Before anybody listens there is nothing to hold back.
      if (listeners.size === 0) shown = document.getState();
      return shown;
    },
    getInitialState: document.getInitialState,
    subscribe: (listener) => {
      if (listeners.size === 0) {
        shown = document.getState();
        stop = document.subscribe(follow);
      }
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0) return;
        stop?.();
        clearTimeout(timer);
        timer = undefined;
      };
    },
  };
}
