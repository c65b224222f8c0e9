import { aisleDocs, aisles } from './aisles.ts';
import { boundaries, boundaryDocs } from './boundaries.ts';
import { chargerDocs, chargers } from './chargers.ts';
import { cloudDocs, clouds } from './clouds.ts';
import { columnDocs, columns } from './columns.ts';
import { dimensionDocs, dimensions } from './dimensions.ts';
import { dropDocs, drops } from './drops.ts';
import { equipment, equipmentDocs } from './equipment.ts';
import { feederDocs, feeders } from './feeders.ts';
import { keepoutDocs, keepouts } from './keepouts.ts';
import type { KindDocs, PlacedKind } from './kind.ts';
import { loadDocs, loads } from './loads.ts';
import { memberDocs, members } from './members.ts';
import { noteDocs, notes } from './notes.ts';
import { pullpointDocs, pullpoints } from './pullpoints.ts';
import { racewayDocs, raceways } from './raceways.ts';
import { sectionDocs, sections } from './sections.ts';
import { stallDocs, stalls } from './stalls.ts';

/** Every kind of element, by the list that holds it, in the order of the file. Every id is unique across all of them. */
export const KINDS = {
  stalls,
  columns,
  members,
  keepouts,
  aisles,
  equipment,
  feeders,
  loads,
  raceways,
  pullpoints,
  drops,
  chargers,
  notes,
  dimensions,
  clouds,
  sections,
  boundaries,
} as const;

type Kinds = typeof KINDS;
export type ElementList = keyof Kinds;
export const ELEMENT_LISTS = Object.keys(KINDS) as readonly ElementList[];

/** Lists whose elements have a place of their own; feeders, loads and chargers stand where others stand. */
export type PlacedList = { [L in ElementList]: Kinds[L] extends { readonly moved: unknown } ? L : never }[ElementList];
export const PLACED_LISTS = ELEMENT_LISTS.filter(isPlaced);

export function isPlaced(list: ElementList): list is PlacedList {
  return 'moved' in KINDS[list];
}

/** A kind, whatever its elements; null where they have no place of their own. */
export const placedKind = (list: ElementList): PlacedKind<never> | null =>
  isPlaced(list) ? (KINDS[list] as unknown as PlacedKind<never>) : null;

/** What the published JSON Schema says of each kind; beside the kinds, so that the page does without. */
export const KIND_DOCS: { readonly [L in ElementList]: KindDocs<Kinds[L]['schema']> } = {
  stalls: stallDocs,
  columns: columnDocs,
  members: memberDocs,
  keepouts: keepoutDocs,
  aisles: aisleDocs,
  equipment: equipmentDocs,
  feeders: feederDocs,
  loads: loadDocs,
  raceways: racewayDocs,
  pullpoints: pullpointDocs,
  drops: dropDocs,
  chargers: chargerDocs,
  notes: noteDocs,
  dimensions: dimensionDocs,
  clouds: cloudDocs,
  sections: sectionDocs,
  boundaries: boundaryDocs,
};
