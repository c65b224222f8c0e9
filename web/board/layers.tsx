import { memo, useLayoutEffect, useMemo, useRef } from 'react';
import { useDocumentStore } from '../document/use-document.tsx';
import { BASE_PICTURES } from './base-pictures.ts';
import { type Layer, layerOf } from './layer.ts';
import { drawLive } from './live-picture.ts';
import type { Painting } from './painting.ts';
import { useView, useViewStore } from './view-store.ts';

interface LayersProps {
  readonly painting: Painting;
  /** The element that carries the counts of what was drawn, for the tests and for whoever wonders. */
  readonly tally: HTMLElement;
}

/**
 * Two layers: the base, one picture for each kind of element; and the live one, for what moves, what is selected and its
 * handles. No step of a drag passes through React. Neither listens: the board's own index finds what is under the hand.
 */
export const Layers = memo(function Layers({ painting, tally }: LayersProps) {
  const document = useDocumentStore();
  const view = useViewStore();
  const { width, height } = useView((state) => state.viewport);
  const base = useRef<HTMLCanvasElement>(null);
  const live = useRef<HTMLCanvasElement>(null);
  const layers = useRef<{ readonly base: Layer; readonly live: Layer } | null>(null);
  const shown = width > 0;

  const draw = useMemo(() => {
    const drawn = (name: string): void => {
      tally.dataset[name] = String(Number(tally.dataset[name] ?? 0) + 1);
    };
    return {
      base: (pen: CanvasRenderingContext2D): void => {
        const { x, y, scale } = view.getState().camera;
        drawn('baseDraws');
        tally.dataset.camera = `${x} ${y} ${scale}`;
        let marks = 0;
        for (const picture of BASE_PICTURES) {
          pen.save();
          marks += picture.draw(pen, painting);
          pen.restore();
        }
        tally.dataset.baseMarks = String(marks);
      },
      live: (pen: CanvasRenderingContext2D): void => {
        drawn('liveDraws');
        const { selection } = document.getState();
        tally.dataset.liveMarks = String(drawLive(pen, painting, view.getState(), selection));
      },
    };
  }, [document, view, painting, tally]);

  useLayoutEffect(() => {
    if (!shown || !base.current || !live.current) return;
    const both = { base: layerOf(base.current, draw.base), live: layerOf(live.current, draw.live) };
    layers.current = both;
    const stop = painting.onDraw((what) => both[what].ask());
    return () => {
      stop();
      layers.current = null;
      both.base.stop();
      both.live.stop();
    };
  }, [shown, painting, draw]);

  // Before anyone sees it bare; also where the layers were made anew.
  useLayoutEffect(() => {
    if (!layers.current) return;
    for (const each of ['base', 'live'] as const) layers.current[each].size(width, height);
  }, [width, height, shown, painting, draw]);

  if (!shown) return null;
  return (
    <>
      <canvas ref={base} />
      <canvas ref={live} />
    </>
  );
});
