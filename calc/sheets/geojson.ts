import { rewind, truncate } from '@turf/turf';
import { footprintOf } from '../../routing/network/footprint.ts';
import { rectangleAt } from '../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../routing/reach/parked.ts';
import { groundOf } from '../../routing/site/georef.ts';
import type { Georef, Point2, Site } from '../../routing/site/site.ts';
import { fromFeet } from '../../routing/site/units.ts';
import { CAUTIONS } from '../cautions.ts';
import type { Plan } from '../plan-shape.ts';

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
 * (`list`), its own fields in the site's units and, for a drop, what its run comes to. Null where the site says not
 * where on the ground it lies.
 */
export function geojson(site: Site, plan: Plan): string | null {
  const { georef } = site;
  if (!georef) return null;
  const features = featuresOf(site, plan, georef);
  const collection = { type: 'FeatureCollection' as const, features, name: site.name, note: CAUTIONS };
  const wound = rewind(collection as never, { reverse: false }) as unknown as typeof collection;
  return `${JSON.stringify(truncate(wound as never, { precision: DECIMALS, coordinates: 2 }))}\n`;
}

function featuresOf(site: Site, plan: Plan, georef: Georef): Feature[] {
  const place = (point: readonly number[]): Position => {
    const [lon, lat] = groundOf(georef, [point[0] as number, point[1] as number]);
    return [lon, lat];
  };
  const point = (at: readonly number[]): Geometry => ({ type: 'Point', coordinates: place(at) });
  const line = (path: readonly (readonly number[])[]): Geometry => ({
    type: 'LineString',
    coordinates: path.map(place),
  });
  const ring = (outline: readonly Point2[]): Geometry => ({
    type: 'Polygon',
    coordinates: [[...outline, outline[0] as Point2].map(place)],
  });
  const local = (value: unknown): unknown => {
    if (typeof value === 'number') return fromFeet(value, site.units);
    return Array.isArray(value) ? value.map(local) : value;
  };
  const feature = (list: string, id: string, geometry: Geometry, fields: Record<string, unknown> = {}): Feature => ({
    type: 'Feature',
    id,
    geometry,
    properties: { list, id, units: site.units, ...fields },
  });
  const runs = new Map(plan.runs.map((run) => [run.drop, run]));
  return [
    ...site.stalls.map((stall) =>
      feature('stalls', stall.id, ring(stallRectangle(stall)), {
        label: stall.label ?? stall.id,
        at: local(stall.at),
        width: local(stall.width),
        depth: local(stall.depth),
        heading: stall.heading,
        use: stall.use ?? 'standard',
      }),
    ),
    ...site.columns.map(({ id, at, size, rotation = 0 }) =>
      feature('columns', id, ring(rectangleAt(at, size, rotation)), { at: local(at), size: local(size), rotation }),
    ),
    ...site.members.map(({ id, from, to }) =>
      feature('members', id, line([from, to]), { from: local(from), to: local(to) }),
    ),
    ...site.keepouts.map(({ id, outline, blocks }) =>
      feature('keepouts', id, ring(outline), { blocks, outline: local(outline) }),
    ),
    ...site.aisles.map(({ id, outline }) => feature('aisles', id, ring(outline), { outline: local(outline) })),
    ...site.equipment.map((one) =>
      feature('equipment', one.id, ring(footprintOf(one)), {
        kind: one.kind,
        at: local(one.at),
        entry: local(one.entry),
      }),
    ),
    ...site.raceways.map(({ id, path, method, place: where }) =>
      feature('raceways', id, line(path), { method, place: where, path: local(path) }),
    ),
    ...site.pullpoints.map(({ id, at }) => feature('pullpoints', id, point(at), { at: local(at) })),
    ...site.drops.map(({ id, box, retractor, cord }) => {
      const run = runs.get(id);
      return feature('drops', id, point(box), {
        box: local(box),
        ...(retractor ? { retractor: local(retractor) } : {}),
        cord: local(cord),
        ...(run
          ? { charger: run.charger, runLength: local(run.length), conductorLength: local(run.conductorLength) }
          : {}),
      });
    }),
  ];
}
