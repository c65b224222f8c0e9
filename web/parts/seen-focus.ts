/** Brings what has the keys wholly into view: a browser leaves be what shows an edge. Returns the way to stop. */
export function showFocus(page: Document): () => void {
  const show = ({ target }: FocusEvent): void => {
    if (target instanceof Element && target.matches(':focus-visible'))
      target.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  page.addEventListener('focusin', show);
  return () => page.removeEventListener('focusin', show);
}
