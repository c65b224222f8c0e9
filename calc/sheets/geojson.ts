import { rewind, truncate } from '@turf/turf';
import { KINDS, PLACED_LISTS, type PlacedList } from '../../routing/site/kinds/kinds.ts';
import { lengthRewriter } from '../../routing/site/numbers/convert-lengths.ts';
import { fromFeet } from '../../routing/site/numbers/units.ts';
import { groundOf } from '../../routing/site/place/georef.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Georef, Site } from '../../routing/site/site.ts';
import type { Plan } from '../plan/plan-shape.ts';
import { CAUTIONS } from '../words/cautions.ts';

type Position = [number, number];
type Geometry =
  | { type: 'Point'; coordinates: Position }
  | { type: 'LineString'; coordinates: Position[] }
  | { type: 'Polygon'; coordinates: Position[][] };

interface Feature {
  readonly type: 'Feature';
  readonly id: string;
  readonly geometry: Geometry;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** Decimals of a degree: about a centimetre on the ground (RFC 7946, section 11.2). */
const DECIMALS = 7;

/**
 * The site and its runs as GeoJSON (RFC 7946): longitude and latitude, right-hand rings; each feature keeps its kind
 * (`list`) and all its own fields in the site's units, from which it can be read back exactly; a drop also what its run
 * comes to. Null where the site says not where on the ground it lies.
 */
export function geojson(site: Site, plan: Plan): string | null {
  const { georef } = site;
  if (!georef) return null;
  const collection = { type: 'FeatureCollection' as const, features: featuresOf(site, plan, georef) };
  const wound = rewind(collection as never, { reverse: false });
  const { features } = truncate(wound as never, { precision: DECIMALS, coordinates: 2 }) as typeof collection;
  return `${JSON.stringify({ type: 'FeatureCollection', name: site.name, note: CAUTIONS, georef, features })}\n`;
}

function featuresOf(site: Site, plan: Plan, georef: Georef): Feature[] {
  const place = (point: readonly number[]): Position => {
    const [lon, lat] = groundOf(georef, [point[0] as number, point[1] as number]);
    return [lon, lat];
  };
  const geometryOf = (list: PlacedList, element: object): Geometry => {
    const { shape, points } = KINDS[list];
    const places = points(element as never).map(place);
    if (shape === 'point') return { type: 'Point', coordinates: places[0] as Position };
    if (shape === 'line') return { type: 'LineString', coordinates: places };
    return { type: 'Polygon', coordinates: [[...places, places[0] as Position]] };
  };
  const runs = new Map(plan.runs.map((run) => [run.drop, run]));
  return PLACED_LISTS.flatMap((list) => {
    const own = ownFields(list, site.units);
    return site[list].map((element): Feature => {
      const run = list === 'drops' ? runs.get(element.id) : undefined;
      const length = (feet: number | null): number | null => (feet === null ? null : fromFeet(feet, site.units));
      return {
        type: 'Feature',
        id: element.id,
        geometry: geometryOf(list, element),
        properties: {
          list,
          units: site.units,
          ...(own(element) as object),
          ...(run && {
            charger: run.charger,
            runLength: length(run.length),
            conductorLength: length(run.conductorLength),
          }),
        },
      };
    });
  });
}

/** The fields of an element of a list as the site file has them, lengths in its units. */
const ownFields = (list: PlacedList, units: Units): (<T extends object>(element: T) => T) =>
  lengthRewriter(KINDS[list].schema, (feet) => fromFeet(feet, units));
