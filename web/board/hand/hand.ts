import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { placeOnSite, type ScreenPoint } from '../camera.ts';
import type { Point } from '../draw/draw-hand.ts';
import { type Passing, pickAt } from '../scene/pick.ts';
import type { Scene } from '../scene/scene.ts';
import type { ViewStore } from '../view-store.ts';

/** Where the hand is and how it is held, as one event of the pointer tells it. */
export interface Hand {
  readonly at: ScreenPoint;
  /** Pixels within which it takes hold of a thing, or is drawn to a line. */
  readonly near: number;
  readonly isFinger: boolean;
  /** With Shift it adds to what is selected, and drags along one axis. */
  readonly shift: boolean;
  /** With Alt nothing draws it. */
  readonly free: boolean;
  /** With Ctrl it draws a path round what it takes, whatever it begins on. */
  readonly encircles: boolean;
}

const NEAR = { mouse: 8, pen: 8, touch: 18 } as const;

/** The hand at a pixel of the board. */
export function handOf(event: PointerEvent, at: ScreenPoint): Hand {
  const { pointerType } = event;
  return {
    at,
    near: NEAR[pointerType as keyof typeof NEAR] ?? NEAR.mouse,
    isFinger: pointerType === 'touch',
    shift: event.shiftKey,
    free: event.altKey,
    encircles: event.ctrlKey || event.metaKey,
  };
}

/** The place under a pixel of the board, feet. */
export function siteAt(view: ViewStore, at: ScreenPoint): Point2 {
  const { camera, viewport } = view.getState();
  return placeOnSite(camera, viewport, at);
}

/** How the hand points, in feet. */
export const handPoint = (view: ViewStore, { near, free }: Hand): Point => ({
  near: near / view.getState().camera.scale,
  free,
});

/** What the hand passes by. */
export function passing(view: ViewStore): Passing {
  const { hiddenKinds, lockedKinds } = view.getState();
  return lockedKinds.size === 0 ? hiddenKinds : new Set([...hiddenKinds, ...lockedKinds]);
}

/** The element under the hand: where the board is raised, what is drawn over the plan comes before what lies on it. */
export function underHand(view: ViewStore, scene: Scene, hand: Hand): Ref | null {
  const at = siteAt(view, hand.at);
  const { near } = handPoint(view, hand);
  const passes = passing(view);
  return view.getState().raisedView?.pick(scene, at, near, passes) ?? pickAt(scene, at, near, passes);
}

/** Takes away what is shown of a gesture. */
export const clearAway = (view: ViewStore): void => view.setState({ band: null, lasso: [], guides: [] });
