import type { Point2 } from '../../../../routing/site/site.ts';
import type { Ref } from '../../../document/change/element-lists.ts';
import { moveElements } from '../../../document/edits/moving/move.ts';
import { type } from '../../draw/typed-in.ts';
import { boardKind, isMarked } from '../../kinds/kinds.ts';
import { snapAt } from '../../snap/snap-at.ts';
import { typedPlace } from '../../typed/typed-place.ts';
import type { Gesture } from '../gesture.ts';
import { clearAway, type Hand, handPoint, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** What is dragged, from where. Places in feet. */
export interface Dragged {
  readonly refs: readonly Ref[];
  /** Where the hand pressed. */
  readonly from: Point2;
  /** The point of it that comes to lie on what it is drawn to. */
  readonly anchor: Point2;
}

type World = Pick<GestureWorld, 'document' | 'view' | 'page' | 'scene'>;

/** The hand moves elements, or a handle of one; `last` is where it was at the last step. */
export function dragging(world: World, dragged: Dragged, last: Hand | null = null): Gesture {
  const { document, view } = world;
  const self: Gesture = {
    doing: 'dragging',
    move: (hand) => {
      drag(world, dragged, hand);
      return dragging(world, dragged, hand);
    },
    end: () => {
      // Whoever types how far goes on without holding it.
      if (view.getState().typing) return self;
      document.getState().commitPreview();
      clearAway(view);
      return null;
    },
    cancel: () => type(world, null),
    giveWay: () => document.getState().cancelPreview(),
    retype: () => last && drag(world, dragged, last),
  };
  return self;
}

/** Previews one step: along one axis with Shift, to what is near, or to what is typed. */
function drag({ document, view, scene }: World, { refs, from, anchor }: Dragged, hand: Hand): void {
  const [x, y] = siteAt(view, hand.at);
  let dx = x - from[0];
  let dy = y - from[1];
  const alongX = hand.shift && Math.abs(dx) >= Math.abs(dy);
  const alongY = hand.shift && !alongX;
  if (alongX) dy = 0;
  if (alongY) dx = 0;
  const wanted: Point2 = [anchor[0] + dx, anchor[1] + dy];
  const { near, free } = handPoint(view, hand);
  const grounded = !refs.some(({ list }) => isMarked(list) && boardKind(list).hold?.rides);
  const found = free
    ? { at: wanted, guides: [] }
    : snapAt(scene(), view.getState(), { at: wanted, near, moving: refs, grounded });
  const { typing } = view.getState();
  const typed = typing && typedPlace(typing, anchor, found.at, scene().units);
  const to: Point2 = typed ?? [alongY ? anchor[0] : found.at[0], alongX ? anchor[1] : found.at[1]];
  const { committed, preview } = document.getState();
  preview(moveElements(committed().file, refs, to[0] - anchor[0], to[1] - anchor[1]));
  view.setState({ pointer: to, guides: typed ? [] : found.guides });
}
