import type { ScreenPoint } from '../../camera.ts';
import { type Gesture, hasMoved } from '../gesture.ts';
import { clearAway, handPoint, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** The hand has pressed with the measure: where it is dragged from there, the measurement ends where it lets go. */
export function measuring({ view, measure }: Pick<GestureWorld, 'view' | 'measure'>, from: ScreenPoint): Gesture {
  const self: Gesture = {
    doing: 'measuring',
    move: (hand) => {
      measure.hover(siteAt(view, hand.at), handPoint(view, hand));
      return self;
    },
    end: ({ at }) => {
      if (hasMoved(from, at)) measure.end();
      clearAway(view);
      return null;
    },
    cancel: measure.stop,
    giveWay: measure.stop,
  };
  return self;
}
