/** Does some work once the next frame has been drawn; the answer calls it off. */
export function afterFrame(work: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    timer = setTimeout(work);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}

/** So long a frame is waited for that does not come, in milliseconds. */
const LATEST_MS = 1000;

/** Resolves once the next frame has been drawn; at once where none is drawn, as in a tab that is not seen. */
export function frameDrawn(): Promise<void> {
  if (typeof requestAnimationFrame === 'undefined' || document.hidden) return Promise.resolve();
  return new Promise((resolve) => {
    afterFrame(resolve);
    setTimeout(resolve, LATEST_MS);
  });
}
