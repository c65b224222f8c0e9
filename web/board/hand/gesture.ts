import type { ScreenPoint } from '../camera.ts';
import type { ViewState } from '../view-store.ts';
import type { Hand } from './hand.ts';

/** What the hand is in the middle of. */
export interface Gesture {
  /** In a word, for the page. */
  readonly doing: ViewState['doing'];
  /** The hand moves; gives what it is in the middle of from then on. */
  readonly move: (hand: Hand) => Gesture;
  /** A finger or the button is let go; null where nothing goes on. */
  readonly end: (hand: Hand) => Gesture | null;
  /** It is given up: by Escape, or because the system took the pointer away. */
  readonly cancel: () => void;
  /** A second finger came down: what the first one did is taken back, for it was the beginning of a pinch. */
  readonly giveWay: () => void;
  /** Where places can be typed meanwhile: something else is typed, and the last step is done again. */
  readonly retype?: () => void;
}

/** Pixels that a press may tremble before it is a drag. */
export const TREMBLE = 4;

/** Whether the hand has moved from where it pressed, and not only trembled. */
export const hasMoved = (from: ScreenPoint, to: ScreenPoint): boolean =>
  Math.hypot(to.px - from.px, to.py - from.py) >= TREMBLE;

export const nothing = (): void => {};
