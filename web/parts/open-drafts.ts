import { useEffect, useRef } from 'react';

let opened = 0;

/** Another document is open: what is typed in fields that it takes away was of the last one, and is let go. */
export function letDraftsGo(): void {
  opened++;
}

interface OpenDraft {
  /** Letters were typed, of the document that is open. */
  readonly typed: () => void;
  readonly take: () => void;
  readonly drop: () => void;
}

/**
 * What is typed in a field and still to be taken over: also where the field goes from under the hand, which tells it
 * nothing. What it was of may have gone with it.
 * @param takes takes over what stands in the field by now; null where there is nothing to be taken
 */
export function useOpenDraft(takes: (() => void) | null): OpenDraft {
  const open = useRef(takes);
  const of = useRef(opened);
  open.current = takes;
  useEffect(
    () => () => {
      if (of.current !== opened) return;
      try {
        open.current?.();
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
      }
    },
    [],
  );
  const drop = (): void => {
    open.current = null;
  };
  return {
    typed: () => {
      of.current = opened;
    },
    take: () => {
      open.current?.();
      drop();
    },
    drop,
  };
}
