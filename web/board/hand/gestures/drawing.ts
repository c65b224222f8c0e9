import type { ScreenPoint } from '../../camera.ts';
import { type Gesture, hasMoved, nothing } from '../gesture.ts';
import { handPoint, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** The hand has set a place with a drawing action: where it is dragged from there, what it draws may end where it lets go. */
export function drawing({ view, draw }: Pick<GestureWorld, 'view' | 'draw'>, from: ScreenPoint): Gesture {
  const self: Gesture = {
    doing: 'drawing',
    move: (hand) => {
      draw.hover(siteAt(view, hand.at), handPoint(view, hand));
      return self;
    },
    end: ({ at }) => {
      if (hasMoved(from, at)) draw.letGo();
      return null;
    },
    // The place that was set stands.
    cancel: nothing,
    giveWay: () => draw.liftOff(true),
  };
  return self;
}
