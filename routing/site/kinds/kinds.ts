import { aisles } from './aisles.ts';
import { chargers } from './chargers.ts';
import { clouds } from './clouds.ts';
import { columns } from './columns.ts';
import { dimensions } from './dimensions.ts';
import { drops } from './drops.ts';
import { equipment } from './equipment.ts';
import { feeders } from './feeders.ts';
import { keepouts } from './keepouts.ts';
import type { PlacedKind } from './kind.ts';
import { loads } from './loads.ts';
import { members } from './members.ts';
import { notes } from './notes.ts';
import { pullpoints } from './pullpoints.ts';
import { raceways } from './raceways.ts';
import { sections } from './sections.ts';
import { stalls } from './stalls.ts';

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
