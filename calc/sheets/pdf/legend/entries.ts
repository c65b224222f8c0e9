import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import type { Job } from '../kit/draft.ts';
import { inkOf } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';

/** What a legend explains the signs of. */
export interface LegendLot extends Pick<Job, 'site' | 'plan' | 'parts'> {
  /** Layers that its plan has something on. */
  readonly layers: ReadonlySet<LayerName>;
  readonly hasMatchLines: boolean;
}

/** Something a legend explains: how it is drawn about a point, and what it is. */
export interface Entry {
  readonly says: string;
  readonly height: number;
  readonly draw: (pen: Pen, at: Point2) => void;
  /** Whether the lot has it; where it does not say, always. */
  readonly isOn?: (lot: LegendLot) => boolean;
}

export interface Group {
  readonly title: string;
  /** Parts of a set that show it. */
  readonly of: readonly SheetPart[];
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

/** What of a legend a set of the lot has a use for. */
export const entriesShown = (groups: readonly Group[], lot: LegendLot): readonly Group[] =>
  groups.flatMap((group) => {
    if (!group.of.some((part) => lot.parts.has(part))) return [];
    const entries = group.entries.filter(({ isOn }) => isOn?.(lot) ?? true);
    return entries.length === 0 ? [] : [{ ...group, entries }];
  });
