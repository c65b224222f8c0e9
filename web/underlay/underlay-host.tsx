import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Painting } from '../board/painting/painting.ts';
import { useViewStore } from '../board/view-store.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageStore } from '../page-state/page-store.ts';
import { later } from '../page-state/when-asked.tsx';
import { failureWords } from '../words/failure-words.ts';
import { type PickedFor, PickProvider } from './picked/pick-context.ts';
import type { UnderlayWorld } from './picked/pick-underlay.ts';
import { createUnderlayStore, UnderlayProvider } from './underlay-store.ts';
import { underlaysOf } from './underlays.ts';

const following = later(() => import('./painting/follow-underlays.ts'));
const picking = later(() => import('./picked/pick-underlay.ts'));

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

  const { pick, take } = useMemo(() => {
    const picked = async (use: (come: Awaited<ReturnType<typeof picking>>) => Promise<void>): Promise<void> => {
      try {
        await use(await picking());
      } catch (error) {
        document.getState().notify(`The file was not read: ${failureWords(error)}`);
      }
    };
    return {
      pick: (how: PickedFor) => void picked(({ pickUnderlay }) => pickUnderlay(world, how)),
      take: (file: File) => void picked(({ takeDropped }) => takeDropped(world, file)),
    };
  }, [document, world]);

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
    const stops = [document.subscribe(() => void begin()), heedDrops(take)];
    void begin();
    return () => {
      gone = true;
      for (const each of stops) each();
      stop?.();
    };
  }, [document, page, painting, world, take]);

  return (
    <UnderlayProvider value={underlays}>
      <PickProvider value={pick}>{children}</PickProvider>
    </UnderlayProvider>
  );
}

/** Catches the files that are dropped on the page. Returns how to stop. */
function heedDrops(take: (file: File) => void): () => void {
  const dropped = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    take(file);
  };
  window.document.addEventListener('drop', dropped, { capture: true });
  return () => window.document.removeEventListener('drop', dropped, { capture: true });
}
