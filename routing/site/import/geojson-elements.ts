import * as v from 'valibot';
import { KINDS, PLACED_LISTS, type PlacedList } from '../kinds/kinds.ts';
import { lengthRewriter } from '../numbers/convert-lengths.ts';
import { toFeet } from '../numbers/units.ts';
import type { Units } from '../schema/vocabulary.ts';
import type { Site } from '../site.ts';
import type { GroundFeature } from './geojson.ts';

/** Elements of a site in feet, as a GeoJSON written from one holds them. */
export type GroundElements = { readonly [L in PlacedList]: readonly Site[L][number][] };

const isPlaced = (list: unknown): list is PlacedList => (PLACED_LISTS as readonly unknown[]).includes(list);

/**
 * The elements that features hold in their properties, where they were written from a site: their fields to the last
 * figure, not their shapes, which are rounded to degrees. Features of other files, or with fields that no element has,
 * are left out.
 */
export function elementsOfGeojson(features: readonly GroundFeature[]): GroundElements {
  const found = Object.fromEntries(PLACED_LISTS.map((list) => [list, [] as unknown[]]));
  for (const { properties } of features) {
    const list = properties.get('list');
    const units = properties.get('units');
    if (!isPlaced(list) || (units !== 'ft' && units !== 'm')) continue;
    const element = elementOf(list, units, properties);
    if (element !== null) found[list]!.push(element);
  }
  return found as unknown as GroundElements;
}

function elementOf(list: PlacedList, units: Units, properties: ReadonlyMap<string, unknown>): unknown {
  const { schema } = KINDS[list];
  const own = Object.keys(schema.entries).filter((name) => properties.has(name));
  const read = v.safeParse(schema, Object.fromEntries(own.map((name) => [name, properties.get(name)])));
  if (!read.success) return null;
  return units === 'm' ? lengthRewriter(schema, (metres) => toFeet(metres, 'm'))(read.output) : read.output;
}
