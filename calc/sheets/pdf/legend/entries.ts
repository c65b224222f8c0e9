import type { Point2 } from '../../../../routing/site/site.ts';
import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import { inkOf } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';

/** Something a legend explains: how it is drawn about a point, and what it is. */
export interface Entry {
  readonly says: string;
  readonly height: number;
  readonly draw: (pen: Pen, at: Point2) => void;
}

export interface Group {
  readonly title: string;
  readonly entries: readonly Entry[];
}

export const ROW = 24;
export const SYMBOL = 9;

export const lineEntry =
  (draw: (pen: Pen, from: Point2, to: Point2) => void): Entry['draw'] =>
  (pen, [x, y]) =>
    draw(pen, [x - 40, y], [x + 40, y]);

export const layerLine = (layer: LayerName): Entry => ({
  says: `${LAYERS[layer].says} (${LAYERS[layer].name})`,
  height: ROW,
  draw: lineEntry((pen, from, to) => pen.line([from, to], inkOf(layer))),
});
