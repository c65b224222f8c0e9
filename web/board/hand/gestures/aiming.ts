import type { Point2 } from '../../../../routing/site/site.ts';
import type { ScreenPoint } from '../../camera.ts';
import { type Gesture, hasMoved } from '../gesture.ts';
import { handPoint, siteAt } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';
import { drawing } from './drawing.ts';

/** Where a finger came down: on the screen, and in feet. */
export interface Aim {
  readonly from: ScreenPoint;
  readonly place: Point2;
  readonly moved: boolean;
}

/**
 * A finger is down that draws and has set no place yet: it sets its place where it lifts; only where it drags out a line
 * or a rectangle, where it began.
 */
export function aiming(world: Pick<GestureWorld, 'view' | 'draw'>, aim: Aim): Gesture {
  const { view, draw } = world;
  const self: Gesture = {
    doing: 'drawing',
    move: (hand) => {
      if (!aim.moved && !hasMoved(aim.from, hand.at)) return self;
      const how = handPoint(view, hand);
      const drags = draw.drags();
      if (drags) draw.press(aim.place, how);
      draw.hover(siteAt(view, hand.at), how);
      return drags ? drawing(world, aim.from) : aiming(world, { ...aim, moved: true });
    },
    end: (hand) => {
      draw.press(aim.moved ? siteAt(view, hand.at) : aim.place, handPoint(view, hand));
      return null;
    },
    cancel: () => draw.liftOff(false),
    giveWay: () => draw.liftOff(false),
  };
  return self;
}
