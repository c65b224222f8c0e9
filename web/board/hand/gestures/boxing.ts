import type { Point2 } from '../../../../routing/site/site.ts';
import { pickIn } from '../../scene/pick.ts';
import { type Gesture, nothing } from '../gesture.ts';
import { clearAway, passing, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** The hand draws a box from a place, feet, and selects what lies in it. */
export function boxing(
  { document, view, scene }: Pick<GestureWorld, 'document' | 'view' | 'scene'>,
  [fx, fy]: Point2,
  adds: boolean,
): Gesture {
  const self: Gesture = {
    doing: 'boxing',
    move: ({ at }) => {
      const [x, y] = siteAt(view, at);
      const band = { minX: Math.min(x, fx), minY: Math.min(y, fy), maxX: Math.max(x, fx), maxY: Math.max(y, fy) };
      view.setState({ band, pointer: [x, y] });
      return self;
    },
    end: () => {
      const { band } = view.getState();
      if (band) document.getState().select(pickIn(scene(), band, passing(view)), adds ? 'add' : 'replace');
      clearAway(view);
      return null;
    },
    cancel: nothing,
    giveWay: nothing,
  };
  return self;
}
