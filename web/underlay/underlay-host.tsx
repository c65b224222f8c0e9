import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { joinedBox } from '../../routing/plane/box.ts';
import { resized } from '../board/framing.ts';
import type { Painting } from '../board/painting.ts';
import { useViewStore } from '../board/view-store.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageStore } from '../page-state/page-store.ts';
import { underlayPainter } from './paint-underlay.ts';
import { PickProvider, pickUnderlay, takeDroppedUnderlays, type UnderlayWorld } from './pick-underlay.ts';
import { boxOnSite } from './placement.ts';
import { attachPlacing } from './placing-hand.ts';
import { createUnderlayStore, UnderlayProvider } from './underlay-store.ts';
import { underlaysOf } from './underlays.ts';

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

  useEffect(() => {
    painting.setUnderlay(underlayPainter(document, underlays, painting.redraw));
    const follow = (): void => {
      const { layers } = underlays.getState();
      const before = view.getState();
      const boxes = underlaysOf(document.getState().site).flatMap((underlay, i) => {
        const picture = layers[i]?.picture;
        return picture && !underlay.hidden ? [boxOnSite(underlay, picture.box)] : [];
      });
      const underBox = boxes.length > 0 ? boxes.reduce(joinedBox) : null;
      view.setState({ underBox });
      // A site that was shown whole, and is nothing but what lies under it, is still to be found.
      if (underBox && !before.underBox) resized(view, painting.scene(), before.viewport, true);
      painting.redraw();
    };
    const stops = [
      underlays.subscribe((state, before) => {
        if (state.layers !== before.layers) follow();
      }),
      document.subscribe((state, before) => {
        if (underlaysOf(state.site) !== underlaysOf(before.site)) follow();
      }),
      takeDroppedUnderlays(window.document, world),
    ];
    const element = window.document.querySelector<HTMLElement>('.board-paper');
    if (element) stops.push(attachPlacing({ element, document, underlays, view, page }));
    return () => {
      for (const stop of stops) stop();
      painting.setUnderlay(null);
    };
  }, [document, underlays, view, page, painting, world]);

  return (
    <UnderlayProvider value={underlays}>
      <PickProvider value={(how) => void pickUnderlay(world, how)}>{children}</PickProvider>
    </UnderlayProvider>
  );
}
