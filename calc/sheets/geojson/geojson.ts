import { rewind, truncate } from '@turf/turf';
import { KINDS, PLACED_LISTS, type PlacedList } from '../../../routing/site/kinds/kinds.ts';
import { lengthRewriter } from '../../../routing/site/numbers/convert-lengths.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import { lonLatOf } from '../../../routing/site/place/georef.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Georef, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Feature, Geometry, PlaceOf, WrittenPosition } from './feature.ts';
import { planFeatures } from './plan-features.ts';

/** Decimals of a degree: about a centimetre on the ground (RFC 7946, section 11.2). */
const DECIMALS = 7;
/** Decimals of a foot or metre of a site that lies nowhere. */
const LOCAL_DECIMALS = 4;

/**
 * The site and its plan as GeoJSON (RFC 7946): longitude and latitude, right-hand rings; each feature keeps its kind
 * (`list`) and all its own fields in the site's units, from which it can be read back exactly; a drop also what its run
 * comes to. After the elements come `circuits`, `conduits`, `ways` of feeders and `boxes` of the plan. A site that says
 * not where on the ground it lies has the coordinates of its file instead: `coordinates` is `local` then, and the note
 * says so first.
 */
export function geojson(site: Site, plan: Plan): string {
  const { georef } = site;
  const place = georef ? onGround(georef) : inFile(site.units);
  const features = [...featuresOf(site, plan, place), ...planFeatures(site, plan, place)];
  const wound = rewind({ type: 'FeatureCollection', features } as never, { reverse: false });
  const precision = georef ? DECIMALS : LOCAL_DECIMALS;
  const { features: written } = truncate(wound as never, { precision, coordinates: 2 }) as {
    readonly features: readonly Feature[];
  };
  const where = georef ? { georef } : { coordinates: 'local', units: site.units };
  const note = georef ? CAUTIONS : `${localWords(site.units)} ${CAUTIONS}`;
  return `${JSON.stringify({ type: 'FeatureCollection', name: site.name, note, ...where, features: written })}\n`;
}

const localWords = (units: Units): string =>
  `Coordinates are local, in ${units === 'm' ? 'metres' : 'feet'} from the origin of the site file, not longitude and latitude: the site does not say where on the ground it lies.`;

const onGround =
  (georef: Georef): PlaceOf =>
  ([x = 0, y = 0]) => [...lonLatOf(georef, [x, y])];

const inFile =
  (units: Units): PlaceOf =>
  ([x = 0, y = 0]) => [fromFeet(x, units), fromFeet(y, units)];

function featuresOf(site: Site, plan: Plan, place: PlaceOf): Feature[] {
  const geometryOf = (list: PlacedList, element: object): Geometry => {
    const { shape, points } = KINDS[list];
    const places = points(element as never).map(place);
    if (shape === 'point') return { type: 'Point', coordinates: places[0] as WrittenPosition };
    if (shape === 'line') return { type: 'LineString', coordinates: places };
    return { type: 'Polygon', coordinates: [[...places, places[0] as WrittenPosition]] };
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
