import type { Point2 } from '../../../../routing/site/site.ts';
import { pickWithin } from '../../scene/pick.ts';
import { type Gesture, nothing } from '../gesture.ts';
import { clearAway, passing, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** The hand draws a path from a place, feet, and selects what lies within it. */
export function lassoing(
  { document, view, scene }: Pick<GestureWorld, 'document' | 'view' | 'scene'>,
  from: Point2,
  adds: boolean,
): Gesture {
  view.setState({ lasso: [from] });
  const self: Gesture = {
    doing: 'boxing',
    move: ({ at }) => {
      const here = siteAt(view, at);
      view.setState({ lasso: [...view.getState().lasso, here], pointer: here });
      return self;
    },
    end: () => {
      const within = pickWithin(scene(), view.getState().lasso, passing(view));
      document.getState().select(within, adds ? 'add' : 'replace');
      clearAway(view);
      return null;
    },
    cancel: nothing,
    giveWay: nothing,
  };
  return self;
}
