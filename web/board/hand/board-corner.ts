import type { ScreenPoint } from '../camera.ts';

export interface BoardCorner {
  /** The pixel of the board at which an event is. */
  readonly at: (event: { readonly clientX: number; readonly clientY: number }) => ScreenPoint;
  /** A gesture begins or goes on, or none does. */
  readonly hold: (held: boolean) => void;
  readonly stop: () => void;
}

/**
 * Where on the board a pointer is. Asking the window where the board lies lays the page out, which after each word that a
 * drag changes takes longer than the drawing: while a gesture is held it is asked once, and again only where the board or
 * the window took another size or something scrolled.
 */
export function boardCorner(element: HTMLElement): BoardCorner {
  let kept: DOMRect | null = null;
  let holding = false;
  const forget = (): void => {
    kept = null;
  };
  const sized = new ResizeObserver(forget);
  sized.observe(element);
  const heard = new AbortController();
  for (const name of ['resize', 'scroll'])
    window.addEventListener(name, forget, { capture: true, passive: true, signal: heard.signal });
  return {
    at: ({ clientX, clientY }) => {
      const corner = kept ?? element.getBoundingClientRect();
      if (holding) kept = corner;
      return { px: clientX - corner.left, py: clientY - corner.top };
    },
    hold: (held) => {
      holding = held;
      if (!held) forget();
    },
    stop: () => {
      sized.disconnect();
      heard.abort();
    },
  };
}
