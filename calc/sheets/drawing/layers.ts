import type { BoundaryKind } from '../../../routing/site/schema/vocabulary.ts';

/** Layers of the drawings, one a kind of thing. Names follow the national CAD standard's form: discipline, major, minor. */
export interface Layer {
  readonly name: string;
  readonly says: string;
  /** `#rrggbb` on paper. */
  readonly colour: string;
  /** Colour index of the DXF format. */
  readonly index: number;
  /** Line weight on the plotted sheet, millimetres. */
  readonly weight: number;
  /** Dashes and gaps on the plotted sheet, millimetres; none: a full line. */
  readonly dash?: readonly number[];
}

const existing = '#8a8478';
const ink = '#20242c';

/** Existing work is thin and grey; what is installed is in full ink. */
export const LAYERS = {
  stalls: { name: 'C-PKNG-STAL', says: 'stalls', colour: existing, index: 8, weight: 0.18 },
  stallNumbers: { name: 'C-PKNG-IDEN', says: 'stall numbers', colour: existing, index: 8, weight: 0.18 },
  aisles: { name: 'C-PKNG-AISL', says: 'aisles', colour: existing, index: 9, weight: 0.13, dash: [4, 2] },
  aisleStripes: { name: 'C-PKNG-STRP', says: 'stripes of access aisles', colour: existing, index: 9, weight: 0.13 },
  columns: { name: 'S-COLS', says: 'columns', colour: existing, index: 8, weight: 0.25 },
  members: { name: 'S-BEAM', says: 'beams and purlins', colour: existing, index: 9, weight: 0.13, dash: [6, 1.5] },
  framing: { name: 'S-FRAM', says: 'beams and purlins, raised or cut', colour: existing, index: 8, weight: 0.25 },
  vehicles: {
    name: 'C-PKNG-VHCL',
    says: 'vehicles, as the boxes round them',
    colour: existing,
    index: 8,
    weight: 0.18,
  },
  inletZones: {
    name: 'C-PKNG-INLT',
    says: 'where inlets of vehicles may be',
    colour: existing,
    index: 8,
    weight: 0.18,
    dash: [1, 1],
  },
  grade: { name: 'C-TOPO-GRAD', says: 'grade and trenches, cut', colour: ink, index: 7, weight: 0.5 },
  gridlines: { name: 'S-GRID', says: 'gridlines', colour: existing, index: 9, weight: 0.13, dash: [8, 2] },
  gridLabels: { name: 'S-GRID-IDEN', says: 'gridline labels', colour: existing, index: 9, weight: 0.18 },
  property: {
    name: 'C-PROP-LINE',
    says: 'property and right-of-way lines',
    colour: ink,
    index: 7,
    weight: 0.35,
    dash: [12, 1.5, 1.5, 1.5, 1.5, 1.5],
  },
  easements: {
    name: 'C-PROP-ESMT',
    says: 'easements and middles of streets',
    colour: existing,
    index: 8,
    weight: 0.18,
    dash: [8, 1.5, 1.5, 1.5],
  },
  keepouts: { name: 'C-SITE-NPLT', says: 'keep-outs', colour: ink, index: 7, weight: 0.18, dash: [1.5, 1.5] },
  equipment: { name: 'E-POWR-EQPM', says: 'equipment', colour: ink, index: 7, weight: 0.5 },
  feeders: {
    name: 'E-POWR-FEED',
    says: 'feeders, straight between what they join',
    colour: ink,
    index: 7,
    weight: 0.35,
    dash: [1, 1.6],
  },
  existingFeeders: {
    name: 'E-POWR-FEED-E',
    says: 'existing feeders, straight between what they join',
    colour: existing,
    index: 8,
    weight: 0.18,
    dash: [1, 1.6],
  },
  workingSpace: { name: 'E-POWR-CLRN', says: 'working space', colour: ink, index: 7, weight: 0.13, dash: [2, 1] },
  raceways: { name: 'E-POWR-CNDT', says: 'raceways, overhead and surface', colour: ink, index: 7, weight: 0.35 },
  underground: {
    name: 'E-POWR-UGND',
    says: 'raceways, underground',
    colour: ink,
    index: 7,
    weight: 0.35,
    dash: [3, 1.5],
  },
  existingRaceways: {
    name: 'E-POWR-CNDT-E',
    says: 'existing raceways, overhead and surface',
    colour: existing,
    index: 8,
    weight: 0.18,
  },
  existingUnderground: {
    name: 'E-POWR-UGND-E',
    says: 'existing raceways, underground',
    colour: existing,
    index: 8,
    weight: 0.18,
    dash: [3, 1.5],
  },
  conduitSizes: { name: 'E-POWR-IDEN', says: 'conduit sizes', colour: ink, index: 7, weight: 0.18 },
  pullPoints: { name: 'E-POWR-JBOX', says: 'pull points', colour: ink, index: 7, weight: 0.25 },
  drops: { name: 'E-POWR-DROP', says: 'drops: box and retractor', colour: ink, index: 7, weight: 0.35 },
  cords: { name: 'E-POWR-CORD', says: 'cords, at rest and out', colour: ink, index: 7, weight: 0.25 },
  dropNumbers: { name: 'E-POWR-TEXT', says: 'drop numbers', colour: ink, index: 7, weight: 0.18 },
  dimensions: { name: 'E-POWR-DIMS', says: 'dimensions', colour: ink, index: 7, weight: 0.13 },
  notes: { name: 'G-ANNO-NOTE', says: 'notes', colour: ink, index: 7, weight: 0.18 },
  sections: { name: 'G-ANNO-SECT', says: 'where sections are cut', colour: ink, index: 7, weight: 0.5, dash: [6, 1.5] },
  revisions: { name: 'G-ANNO-REVS', says: 'what a revision changed', colour: ink, index: 1, weight: 0.35 },
} as const satisfies Record<string, Layer>;

export type LayerName = keyof typeof LAYERS;

/** The layer of a feeder that is drawn straight: existing work has its own. */
export const feederLayer = ({ existing: stands }: { readonly existing?: boolean }): 'feeders' | 'existingFeeders' =>
  stands === true ? 'existingFeeders' : 'feeders';

/** The layer of a boundary of a kind: of the lot, or of what lies on it or beside it. */
export const boundaryLayer = (kind: BoundaryKind = 'property'): 'property' | 'easements' =>
  kind === 'property' || kind === 'right-of-way' ? 'property' : 'easements';
