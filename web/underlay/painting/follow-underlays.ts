import { joinedBox } from '../../../routing/plane/box.ts';
import { resized } from '../../board/framing.ts';
import type { Painting } from '../../board/painting/painting.ts';
import type { PageStore } from '../../page-state/page-store.ts';
import type { UnderlayWorld } from '../picked/pick-underlay.ts';
import { boxOnSite } from '../placing/placement.ts';
import { attachPlacing } from '../placing/placing-hand.ts';
import { underlaysOf } from '../underlays.ts';
import { underlayPainter } from './paint-underlay.ts';

/** Has the board draw what lies under the open site, and the hand place it; returns the way to stop. */
export function followUnderlays(world: UnderlayWorld, painting: Painting, page: PageStore): () => void {
  const { document, underlays, view } = world;
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
  ];
  const element = window.document.querySelector<HTMLElement>('.board-paper');
  if (element) stops.push(attachPlacing({ element, document, underlays, view, page }));
  follow();
  return () => {
    for (const stop of stops) stop();
    painting.setUnderlay(null);
  };
}
