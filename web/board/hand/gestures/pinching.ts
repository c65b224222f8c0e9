import { pushed, type ScreenPoint, zoomed } from '../../camera.ts';
import type { ViewStore } from '../../view-store.ts';
import { type Gesture, nothing } from '../gesture.ts';
import { clearAway } from '../hand.ts';
import { panning } from './panning.ts';

/** The fingers that are down, in the order in which they came. */
export type Fingers = ReadonlyMap<number, ScreenPoint>;

type Two = readonly [ScreenPoint, ScreenPoint];

const middleOf = ([a, b]: Two): ScreenPoint => ({ px: (a.px + b.px) / 2, py: (a.py + b.py) / 2 });
const spreadOf = ([a, b]: Two): number => Math.hypot(a.px - b.px, a.py - b.py);

/** Two fingers push and zoom the drawing from where they were `last`: the places under them stay under them. */
export function pinching(view: ViewStore, fingers: Fingers, last = firstTwo(fingers)): Gesture {
  const self: Gesture = {
    doing: 'panning',
    move: () => {
      const now = firstTwo(fingers);
      if (!now || !last) return self;
      const { camera, viewport } = view.getState();
      const middle = middleOf(now);
      const before = middleOf(last);
      const moved = pushed(camera, middle.px - before.px, middle.py - before.py);
      view.setState({ camera: zoomed(moved, viewport, middle, spreadOf(now) / (spreadOf(last) || 1)) });
      return pinching(view, fingers, now);
    },
    end: () => {
      // The finger that stays goes on pushing the drawing.
      const [stays, ...more] = fingers.values();
      if (stays && more.length === 0) return panning(view, stays);
      clearAway(view);
      return null;
    },
    cancel: nothing,
    giveWay: nothing,
  };
  return self;
}

function firstTwo(fingers: Fingers): Two | null {
  const [a, b] = fingers.values();
  return a && b ? [a, b] : null;
}
