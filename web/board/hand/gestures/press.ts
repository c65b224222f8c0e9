import { samePart } from '../../../../routing/site/kinds/kind.ts';
import { placedKind } from '../../../../routing/site/kinds/kinds.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { positionsOf, type Ref } from '../../../document/change/element-lists.ts';
import { keepsDrawing } from '../../../document/field-work.ts';
import { boardKind, isMarked } from '../../kinds/kinds.ts';
import type { Gesture } from '../gesture.ts';
import { type Hand, siteAt, underHand } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';
import { handleOnScreen, handlesOf } from '../handles.ts';
import { type Pressed, pressing } from './pressing.ts';

/** The hand that selects presses: what it takes hold of is a handle, an element, or nothing. */
export function pressWithHand(world: Pick<GestureWorld, 'document' | 'view' | 'page' | 'scene'>, hand: Hand): Gesture {
  const { document, view, scene } = world;
  const { camera, viewport } = view.getState();
  const { site, selection, select } = document.getState();
  const place = siteAt(view, hand.at);
  const adds = hand.shift;
  const begin = (pressed: Partial<Pressed>): Gesture =>
    pressing(world, { from: hand.at, place, refs: null, anchor: null, alone: null, adds, ...pressed });

  const keeps = keepsDrawing(document.getState());
  const handle = (keeps ? [] : handlesOf(site, selection, camera.scale)).find((each) => {
    const shown = handleOnScreen(each, camera, viewport);
    return Math.hypot(shown.px - hand.at.px, shown.py - hand.at.py) <= hand.near;
  });
  if (handle && !hand.encircles) {
    select([handle.ref]);
    return begin({ refs: [handle.ref], anchor: [handle.at[0], handle.at[1]], adds: false });
  }
  const ref = underHand(view, scene(), hand);
  if (!ref || hand.encircles) return begin({});
  const held = selection.some(({ list, id }) => list === ref.list && id === ref.id);
  // A lot is all stalls: what is drawn from one is a box, and it is chosen when the hand lets go where it pressed.
  if (!held && isMarked(ref.list) && boardKind(ref.list).hold?.ground) return begin({ alone: ref });
  // A finger moves only what it has chosen before: else a swipe across the drawing would carry a drop along.
  const moves = !keeps && (!hand.isFinger || held);
  if (adds) select([ref], 'toggle');
  // Nor does it choose before it lifts: it may yet push or pinch the drawing.
  else if (!held && moves) select([ref]);
  const refs =
    moves && !(adds && held) ? document.getState().selection.map(({ list, id }): Ref => ({ list, id })) : null;
  return begin({ refs, anchor: anchorOf(site, ref), alone: adds ? null : ref });
}

/** The point of an element, or of a handle of it, that comes to lie on the grid when it is moved. Feet. */
export function anchorOf(site: Site, { list, id, part }: Ref): Point2 | null {
  const kind = placedKind(list);
  // Lists that follow one another in a drag share the index of their ids.
  const element = site[list][positionsOf(site[list]).get(id) ?? -1] as never;
  if (!kind || !element) return null;
  const held = part && kind.parts?.of(element).find((one) => samePart(one.part, part));
  if (held) return [held.at[0], held.at[1]];
  return kind.anchor?.(element) ?? kind.points(element)[0] ?? null;
}
