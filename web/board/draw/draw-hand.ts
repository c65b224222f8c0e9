import type { Point2 } from '../../../routing/site/site.ts';
import { ACTIONS } from '../kinds/kinds.ts';
import type { Scene } from '../scene/scene.ts';
import { snapAt } from '../snap/snap-at.ts';
import { type Desk, type InHand, inHand } from './desk.ts';
import type { Spot } from './draft.ts';
import { drags, hover, letGo, liftOff, press } from './drawing.ts';

/** How the hand points. */
export interface Point {
  /** So near, feet, something draws the hand to it. */
  readonly near: number;
  /** Nothing does. */
  readonly free: boolean;
}

/** What the pointer does with a drawing action. Places in feet. */
export interface DrawHand {
  readonly hover: (at: Point2, how: Point) => void;
  readonly press: (at: Point2, how: Point) => void;
  readonly letGo: () => void;
  /** Whether a drag would draw from where it begins: a line, or a rectangle. */
  readonly drags: () => boolean;
  /** The hand turns to something else: the place under it is none, nor, where it was `pressed`, the last. */
  readonly liftOff: (pressed: boolean) => void;
}

/** The hand that draws on a scene: it snaps to what stands, and not to what it is drawing. */
export function drawHand(desk: Desk, base: () => Scene): DrawHand {
  const spotAt = (at: Point2, { near, free }: Point): Spot => {
    const { view } = desk;
    if (free) {
      view.setState({ pointer: at, guides: [] });
      return { at, z: null, ref: null };
    }
    const draft = view.getState().draft;
    const spots = draft && !draft.whole ? draft.spots : [];
    const found = snapAt(base(), view.getState(), {
      at,
      near,
      from: spots.at(-1)?.at ?? null,
      before: spots.at(-2)?.at ?? null,
      grounded: groundedBy(inHand(desk)),
    });
    view.setState({ pointer: found.at, guides: found.guides });
    return { at: found.at, z: found.z, ref: found.ref };
  };
  return {
    hover: (at, how) => hover(desk, spotAt(at, how)),
    press: (at, how) => press(desk, spotAt(at, how)),
    letGo: () => letGo(desk),
    drags: () => drags(desk),
    liftOff: (pressed) => liftOff(desk, pressed),
  };
}

const groundedBy = (held: InHand | null): boolean => held !== null && (ACTIONS[held.name].grounded ?? false);
