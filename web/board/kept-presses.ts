/** Presses that nobody answers yet. */
export interface KeptPresses {
  /** Has the last press happen again, as far as it has gone: now there is who answers it. */
  readonly handOn: () => void;
  readonly stop: () => void;
}

/** Keeps the last press on an element, of one finger: where it began, how far it has come, and that it ended. */
export function keepPresses(element: HTMLElement): KeptPresses {
  let down: PointerEvent | null = null;
  let moved: PointerEvent | null = null;
  let ended: PointerEvent | null = null;
  const keep = (event: PointerEvent): void => {
    // Only the board itself: what stands on it answers by itself.
    if (event.type === 'pointerdown') {
      if (!event.isPrimary || event.button !== 0) return;
      [down, moved, ended] = [event, null, null];
    } else if (event.pointerId !== down?.pointerId || ended !== null) return;
    else if (event.type === 'pointermove') moved = event;
    else if (event.type === 'pointerup') ended = event;
    else down = null;
  };
  const heard = new AbortController();
  for (const type of ['pointerdown', 'pointermove', 'pointerup', 'pointercancel'] as const)
    element.addEventListener(type, keep, { signal: heard.signal });
  const stop = (): void => heard.abort();
  return {
    handOn: () => {
      stop();
      if (down === null) return;
      for (const event of [down, moved, ended])
        if (event !== null) element.dispatchEvent(new PointerEvent(event.type, event));
    },
    stop,
  };
}
