import type { Point2 } from '../../../routing/site/site.ts';
import type { Point } from '../draw/draw-hand.ts';
import type { Scene } from '../scene/scene.ts';
import { snapAt } from '../snap/snap-at.ts';
import type { ViewStore } from '../view-store.ts';

/** What the hand does with the measure: two presses, or a drag from one end to the other. Places in feet. */
export interface MeasureHand {
  /** The first end, or the second where the first is given. */
  readonly press: (at: Point2, how: Point) => void;
  /** The hand moves: the open end follows it. */
  readonly hover: (at: Point2, how: Point) => void;
  /** The open end stays where it is: what is measured stands until the next measurement. */
  readonly end: () => void;
  /** Throws the measurement away. */
  readonly stop: () => void;
}

/** Measures on a scene; both ends are drawn to what stands there. */
export function measureHand(view: ViewStore, scene: () => Scene): MeasureHand {
  const place = (at: Point2, { near, free }: Point): Point2 => {
    const from = view.getState().measureFrom;
    const found = free ? { at, guides: [] } : snapAt(scene(), view.getState(), { at, near, from });
    view.setState({ guides: found.guides, pointer: found.at });
    return found.at;
  };
  const end = (): void => view.setState({ measureFrom: null, guides: [] });
  return {
    press: (at, how) => {
      const from = view.getState().measureFrom;
      const here = place(at, how);
      view.setState(from ? { measured: [from, here] } : { measured: [here, here], measureFrom: here });
      if (from) end();
    },
    hover: (at, how) => {
      const from = view.getState().measureFrom;
      if (from) view.setState({ measured: [from, place(at, how)] });
    },
    end,
    stop: () => view.setState({ measured: null, measureFrom: null, guides: [] }),
  };
}
