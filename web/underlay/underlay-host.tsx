import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { resized } from '../board/framing.ts';
import type { Painting } from '../board/painting.ts';
import { useViewStore } from '../board/view-store.ts';
import { useDocumentStore } from '../document/use-document.ts';
import { underlayPainter } from './paint-underlay.ts';
import { PickProvider, pickUnderlay, takeDroppedUnderlays, type UnderlayWorld } from './pick-underlay.ts';
import { boxOnSite } from './placement.ts';
import { attachPlacing } from './placing-hand.ts';
import { createUnderlayStore, UnderlayProvider } from './underlay-store.ts';

/** Gives the page below it the underlay of the open site: on the board, to the hand, and to the ledger. */
export function UnderlayHost({ painting, children }: { readonly painting: Painting; readonly children: ReactNode }) {
  const document = useDocumentStore();
  const view = useViewStore();
  const [underlays] = useState(() => createUnderlayStore(document));
  const world = useMemo(
    (): UnderlayWorld => ({ document, underlays, view, scene: painting.scene }),
    [document, underlays, view, painting],
  );

  useEffect(() => {
    painting.setUnderlay(underlayPainter(document, underlays, painting.redraw));
    const follow = (): void => {
      const { underlay } = document.getState().site;
      const { picture } = underlays.getState();
      const before = view.getState();
      const underBox = picture && underlay && !underlay.hidden ? boxOnSite(underlay, picture.box) : null;
      view.setState({ underBox });
      // A site that was shown whole, and is nothing but what lies under it, is still to be found.
      if (underBox && !before.underBox) resized(view, painting.scene(), before.viewport, true);
      painting.redraw();
    };
    const stops = [
      underlays.subscribe((state, before) => {
        if (state.picture !== before.picture) follow();
      }),
      document.subscribe((state, before) => {
        if (state.site.underlay !== before.site.underlay) follow();
      }),
      takeDroppedUnderlays(window.document, world),
    ];
    const element = window.document.querySelector<HTMLElement>('.board-paper');
    if (element) stops.push(attachPlacing({ element, document, underlays, view }));
    return () => {
      for (const stop of stops) stop();
      painting.setUnderlay(null);
    };
  }, [document, underlays, view, painting, world]);

  return (
    <UnderlayProvider value={underlays}>
      <PickProvider value={() => void pickUnderlay(world)}>{children}</PickProvider>
    </UnderlayProvider>
  );
}
