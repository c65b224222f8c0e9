import type { Point2 } from '../../../../routing/site/site.ts';
import type { Ref } from '../../../document/change/element-lists.ts';
import type { ScreenPoint } from '../../camera.ts';
import { type Gesture, hasMoved, nothing } from '../gesture.ts';
import { clearAway, type Hand } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';
import { boxing } from './boxing.ts';
import { dragging } from './dragging.ts';
import { lassoing } from './lassoing.ts';
import { panning } from './panning.ts';

/** A press that has not moved yet. */
export interface Pressed {
  readonly from: ScreenPoint;
  /** The same in the plan, feet: the board may change its size before the hand has moved. */
  readonly place: Point2;
  /** What would be moved; null where the press is on open ground. */
  readonly refs: readonly Ref[] | null;
  readonly anchor: Point2 | null;
  /** Chosen alone when the hand lets go without having moved. */
  readonly alone: Ref | null;
  readonly adds: boolean;
}

type World = Pick<GestureWorld, 'document' | 'view' | 'page' | 'scene'>;

/** The hand has pressed, to select or to move: it chooses where it lets go, and sets off where it moves. */
export function pressing(world: World, pressed: Pressed): Gesture {
  const { document, view } = world;
  const { from, refs, alone, adds } = pressed;
  const self: Gesture = {
    doing: 'pressing',
    move: (hand) => (hasMoved(from, hand.at) ? setOff(world, pressed, hand) : self),
    end: () => {
      const { select } = document.getState();
      if (alone) select([alone], adds ? 'toggle' : 'replace');
      else if (!refs && !adds) select([]);
      clearAway(view);
      return null;
    },
    cancel: nothing,
    giveWay: nothing,
  };
  return self;
}

/** A press that has moved becomes a drag, a push of the drawing, or a box or path round what is selected. */
function setOff(world: World, { place, refs, anchor, adds }: Pressed, hand: Hand): Gesture {
  if (refs && anchor) {
    world.view.setState({ hovered: null });
    return dragging(world, { refs, from: place, anchor }).move(hand);
  }
  if (hand.isFinger) return panning(world.view, hand.at);
  return hand.encircles ? lassoing(world, place, adds) : boxing(world, place, adds);
}
