import { initialsHere } from '../document/pen.ts';
import type { PageStore } from './page-store.ts';

/**
 * What waits to be signed is written without initials when the page is left: it may not come back. Where it does, the
 * question still stands, and whoever answers it signs what was written.
 */
export function attachUnsigned(page: PageStore): () => void {
  const leave = ({ type }: Event): void => {
    if (type === 'visibilitychange' && document.visibilityState !== 'hidden') return;
    const { unsigned } = page.getState();
    if (!unsigned) return;
    unsigned();
    page.setState({ unsigned: () => initialsHere() !== '' && unsigned() });
  };
  // On the way down, before what has changed is handed to the store.
  addEventListener('pagehide', leave, true);
  addEventListener('visibilitychange', leave, true);
  return () => {
    removeEventListener('pagehide', leave, true);
    removeEventListener('visibilitychange', leave, true);
  };
}
