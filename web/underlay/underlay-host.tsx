import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Painting } from '../board/painting.ts';
import { useViewStore } from '../board/view-store.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageStore } from '../page-state/page-store.ts';
import { later } from '../page-state/when-asked.tsx';
import { failureWords } from '../words/failure-words.ts';
import { PickProvider } from './pick-context.ts';
import { pickUnderlay, takeDroppedUnderlays, type UnderlayWorld } from './pick-underlay.ts';
import { createUnderlayStore, UnderlayProvider } from './underlay-store.ts';
import { underlaysOf } from './underlays.ts';

const following = later(() => import('./follow-underlays.ts'));

/** Gives the page below it the underlay of the open site: on the board, to the hand, and to the ledger. */
export function UnderlayHost({ painting, children }: { readonly painting: Painting; readonly children: ReactNode }) {
  const document = useDocumentStore();
  const view = useViewStore();
  const page = usePageStore();
  const [underlays] = useState(() => createUnderlayStore(document));
  const world = useMemo(
    (): UnderlayWorld => ({ document, underlays, view, scene: painting.scene }),
    [document, underlays, view, painting],
  );

  // A site with nothing under it needs none of what draws and places it.
  useEffect(() => {
    let stop: (() => void) | null = null;
    let begun = false;
    let gone = false;
    const begin = async (): Promise<void> => {
      if (begun || underlaysOf(document.getState().site).length === 0) return;
      begun = true;
      try {
        const { followUnderlays } = await following();
        if (!gone) stop = followUnderlays(world, painting, page);
      } catch (error) {
        begun = false;
        document.getState().notify(`What lies under the drawing is not shown: ${failureWords(error)}`);
      }
    };
    const stops = [document.subscribe(() => void begin()), takeDroppedUnderlays(window.document, world)];
    void begin();
    return () => {
      gone = true;
      for (const each of stops) each();
      stop?.();
    };
  }, [document, page, painting, world]);

  return (
    <UnderlayProvider value={underlays}>
      <PickProvider value={(how) => void pickUnderlay(world, how)}>{children}</PickProvider>
    </UnderlayProvider>
  );
}
