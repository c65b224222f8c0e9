import { pushed, type ScreenPoint } from '../../camera.ts';
import type { ViewStore } from '../../view-store.ts';
import { type Gesture, nothing } from '../gesture.ts';
import { clearAway } from '../hand.ts';

/** The hand pushes the drawing from where it was `last`. */
export const panning = (view: ViewStore, last: ScreenPoint): Gesture => ({
  doing: 'panning',
  move: ({ at }) => {
    view.setState({ camera: pushed(view.getState().camera, at.px - last.px, at.py - last.py) });
    return panning(view, at);
  },
  end: () => {
    clearAway(view);
    return null;
  },
  cancel: nothing,
  giveWay: nothing,
});
