import type { PageStore } from './page-store.ts';

/** What waits to be signed is written without initials when the page is left: it may not come back. */
export function attachUnsigned(page: PageStore): () => void {
  const leave = ({ type }: Event): void => {
    if (type === 'visibilitychange' && document.visibilityState !== 'hidden') return;
    const { unsigned } = page.getState();
    if (!unsigned) return;
    page.setState({ unsigned: null });
    unsigned();
  };
  // On the way down, before what has changed is handed to the store.
  addEventListener('pagehide', leave, true);
  addEventListener('visibilitychange', leave, true);
  return () => {
    removeEventListener('pagehide', leave, true);
    removeEventListener('visibilitychange', leave, true);
  };
}
