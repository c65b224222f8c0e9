import { LAYERS, type LayerName } from '../drawing/layers.ts';

/** The layer of the frames and title blocks of the sheets, and that of the edges of their views. */
export const SHEET_LAYER = 'G-ANNO-TTLB';
export const VIEW_LAYER = 'G-ANNO-VPRT';

/** Layers of the model that hold its words, which the views of the sheets hide: each sheet has its own, to its own scale. */
export const letteredLayer = (layer: LayerName | null): string =>
  layer === null || layer === 'notes'
    ? 'E-POWR-ANNO'
    : HOLDS_WORDS.has(layer)
      ? LAYERS[layer].name
      : `${LAYERS[layer].name}-IDEN`;

/** Those that hold words already. */
const HOLDS_WORDS: ReadonlySet<LayerName> = new Set([
  'stallNumbers',
  'conduitSizes',
  'dropNumbers',
  'dimensions',
  'gridLabels',
]);

/** Dimensions that a person put on the plan, which every view shows. */
export const OWN_DIMENSIONS = 'G-ANNO-DIMS';

export interface DxfLayer {
  readonly name: string;
  readonly index: number;
  /** Millimetres. */
  readonly weight: number;
  readonly lineType: string;
  /** The views of the sheets hide it. */
  readonly isOfModel: boolean;
  readonly isPlotted: boolean;
}

export const lineTypeOf = (layer: LayerName): string =>
  'dash' in LAYERS[layer] ? `DASH_${LAYERS[layer].name}` : 'Continuous';

/** Every layer of a file, each once. */
export function dxfLayers(): readonly DxfLayer[] {
  const names = Object.keys(LAYERS) as LayerName[];
  const plain = { index: 7, weight: 0.18, lineType: 'Continuous', isOfModel: false, isPlotted: true };
  const drawn = names.map((layer): DxfLayer => {
    const { name, index, weight } = LAYERS[layer];
    const isOfModel = layer === 'gridlines' || layer === 'gridLabels';
    return { ...plain, name, index, weight, lineType: lineTypeOf(layer), isOfModel };
  });
  const lettered = [null, ...names].map((layer): DxfLayer => {
    const { index } = layer === null ? { index: 7 } : LAYERS[layer];
    const weight = layer !== null && HOLDS_WORDS.has(layer) ? LAYERS[layer].weight : plain.weight;
    return { ...plain, name: letteredLayer(layer), index, weight, isOfModel: true };
  });
  const all = [
    ...lettered,
    { ...plain, name: OWN_DIMENSIONS, weight: 0.13 },
    { ...plain, name: SHEET_LAYER },
    { ...plain, name: VIEW_LAYER, isPlotted: false },
    ...drawn,
  ];
  const byName = new Map<string, DxfLayer>([['0', { ...plain, name: '0' }]]);
  for (const layer of all) if (!byName.has(layer.name)) byName.set(layer.name, layer);
  return [...byName.values()];
}
