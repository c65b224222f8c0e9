import type Konva from 'konva';
import { memo, useEffect, useMemo, useRef } from 'react';
// Only the shapes that are used: the whole of the library is three times as large.
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore';
import { useDocumentStore } from '../../document/use-document.tsx';
import { useView, useViewStore } from '../view-store.ts';
import { BASE_PICTURES } from './base-pictures.ts';
import { liveDrawing } from './live-drawing.ts';
import type { Painting } from './painting.ts';

interface LayersProps {
  readonly painting: Painting;
  /** The element that carries the counts of what was drawn, for the tests and for whoever wonders. */
  readonly tally: HTMLElement;
}

/**
 * Two layers: the base, one shape for each kind of picture; and the live one, for what moves, what is selected and its
 * handles. No step of a drag passes through React. Neither listens: the board's own index finds what is under the hand,
 * and no hit canvas is drawn.
 */
export const Layers = memo(function Layers({ painting, tally }: LayersProps) {
  const document = useDocumentStore();
  const view = useViewStore();
  const viewport = useView((state) => state.viewport);
  const base = useRef<Konva.Layer>(null);
  const live = useRef<Konva.Layer>(null);

  useEffect(() => painting.onDraw((what) => (what === 'base' ? base : live).current?.batchDraw()), [painting]);

  const pictures = useMemo(() => {
    let drawn = 0;
    return BASE_PICTURES.map(({ name, draw }, i) => ({
      name,
      scene: (context: Konva.Context) => {
        if (i === 0) {
          drawn = 0;
          const { x, y, scale } = view.getState().camera;
          tally.dataset.baseDraws = String(Number(tally.dataset.baseDraws ?? 0) + 1);
          tally.dataset.camera = `${x} ${y} ${scale}`;
        }
        context.save();
        drawn += draw(context._context as CanvasRenderingContext2D, painting);
        context.restore();
        tally.dataset.baseMarks = String(drawn);
      },
    }));
  }, [painting, tally, view]);

  const drawLiveLayer = useMemo(
    () => (context: Konva.Context) => {
      tally.dataset.liveDraws = String(Number(tally.dataset.liveDraws ?? 0) + 1);
      context.save();
      const { selection } = document.getState();
      const pen = context._context as CanvasRenderingContext2D;
      tally.dataset.liveMarks = String(liveDrawing()?.(pen, painting, view.getState(), selection) ?? 0);
      context.restore();
    },
    [document, view, painting, tally],
  );

  if (viewport.width === 0) return null;
  return (
    <Stage width={viewport.width} height={viewport.height} listening={false}>
      <Layer ref={base} listening={false}>
        {pictures.map(({ name, scene }) => (
          <Shape key={name} name={name} sceneFunc={scene} listening={false} perfectDrawEnabled={false} />
        ))}
      </Layer>
      <Layer ref={live} listening={false}>
        <Shape name="live" sceneFunc={drawLiveLayer} listening={false} perfectDrawEnabled={false} />
      </Layer>
    </Stage>
  );
});
