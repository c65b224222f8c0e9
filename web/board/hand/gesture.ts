import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';
import type { ScreenPoint } from '../camera.ts';

/** What the hand is in the middle of. Screen points are pixels of the board, site points feet. */
export type Gesture =
  | { readonly kind: 'idle' }
  | { readonly kind: 'panning'; readonly last: ScreenPoint }
  | {
      readonly kind: 'pressing';
      readonly from: ScreenPoint;
      /** The same in the plan: the board may change its size before the hand has moved. */
      readonly at: Point2;
      /** What would be moved; null where the press is on open ground. */
      readonly refs: readonly Ref[] | null;
      readonly anchor: Point2 | null;
      /** Chosen alone when the hand lets go without having moved. */
      readonly alone: Ref | null;
      readonly adds: boolean;
    }
  | { readonly kind: 'dragging'; readonly from: Point2; readonly refs: readonly Ref[]; readonly anchor: Point2 }
  | { readonly kind: 'boxing'; readonly from: Point2; readonly adds: boolean }
  | { readonly kind: 'measuring'; readonly from: ScreenPoint }
  | { readonly kind: 'lassoing'; readonly adds: boolean }
  /** A finger that is down and has set no place yet. */
  | { readonly kind: 'aiming'; readonly from: ScreenPoint; readonly at: Point2; readonly moved: boolean }
  | { readonly kind: 'drawing'; readonly from: ScreenPoint }
  | { readonly kind: 'pinching'; readonly last: readonly [ScreenPoint, ScreenPoint] };

export const IDLE: Gesture = { kind: 'idle' };

/** Pixels that a press may tremble before it is a drag. */
export const TREMBLE = 4;
