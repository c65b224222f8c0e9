import { afterPress } from '../../parts/keys-to-board.ts';
import { fitAll, zoomBy } from '../framing.ts';
import type { Painting } from '../painting/painting.ts';
import { useView, useViewStore } from '../view-store.ts';

const STEP = 1.4;

/** The ways to look at the drawing, in its corner. */
export function LookButtons({ painting }: { readonly painting: Painting }) {
  const view = useViewStore();
  const raised = useView((state) => state.raised);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the buttons within take the keys
    <div className="look-buttons over-board" role="toolbar" aria-label="Look" onClick={afterPress}>
      <button type="button" title="Show the whole lot (F)" onClick={() => fitAll(view, painting.scene())}>
        Fit
      </button>
      <button
        type="button"
        aria-pressed={raised}
        title="Draw heights straight up over the plan (H)"
        onClick={() => view.setState({ raised: !raised })}
      >
        Raise
      </button>
      <button
        type="button"
        className="icon"
        aria-label="Zoom out"
        title="Zoom out (-)"
        onClick={() => zoomBy(view, 1 / STEP)}
      >
        −
      </button>
      <button
        type="button"
        className="icon"
        aria-label="Zoom in"
        title="Zoom in (+)"
        onClick={() => zoomBy(view, STEP)}
      >
        +
      </button>
    </div>
  );
}
