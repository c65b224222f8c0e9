import { twiceAreaOf } from '../../plane/area.ts';
import type { Georef } from '../site.ts';
import { BUDGET, type Imported, refused } from './imported.ts';

type Position = readonly [lon: number, lat: number];

/** A part of a feature: a place, a line, or the outer ring of an area, which does not repeat its first point. */
export interface GroundShape {
  readonly kind: 'point' | 'line' | 'ring';
  /** Degrees; a ring runs counter-clockwise. */
  readonly points: readonly Position[];
}

export interface GroundFeature {
  /** Where in the file it stands: `features[3]`. */
  readonly place: string;
  readonly id: string | null;
  readonly properties: ReadonlyMap<string, unknown>;
  readonly shapes: readonly GroundShape[];
  /** Inner rings of its areas, which are left out. */
  readonly holes: number;
}

export interface GroundFile {
  readonly features: readonly GroundFeature[];
  /** Where [0, 0] of the site that the file was written from lies; null in any other file. */
  readonly georef: Georef | null;
}

type Plain = Readonly<Record<string, unknown>>;

/** Names of the one system that GeoJSON knows (RFC 7946, section 4), as older files spell it. */
const WGS84 = /(CRS:?84|EPSG:{1,2}4326|WGS ?84)$/i;

class Refusal extends Error {
  readonly place: string;
  constructor(place: string, says: string) {
    super(says);
    this.place = place;
  }
}

/**
 * The features of a GeoJSON text (RFC 7946), each geometry taken apart. A fault names its place in the file: not JSON,
 * an unknown kind, a coordinate that is no longitude and latitude, a ring that is not closed, a `crs` other than WGS
 * 84, or past the budget. Rings wound the other way are turned, as the standard asks of readers. Never throws.
 */
export function readGeojson(text: string): Imported<GroundFile> {
  if (text.length > BUDGET.characters)
    return refused('the file', `is over ${BUDGET.characters / 1e6} million characters`);
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused('the file', `is not JSON: ${error instanceof Error ? error.message : 'it cannot be read'}`);
  }
  try {
    return { ok: true, value: { features: featuresIn(value), georef: georefOf(value) } };
  } catch (error) {
    if (error instanceof Refusal) return refused(error.place, error.message);
    throw error;
  }
}

function featuresIn(value: unknown): readonly GroundFeature[] {
  const top = objectAt(value, 'the file');
  checkSystem(top);
  const spent = { points: 0 };
  if (top.type === 'FeatureCollection') {
    const list = listAt(top.features, 'features');
    if (list.length > BUDGET.entities)
      throw new Refusal('features', `holds more than ${BUDGET.entities.toLocaleString('en-US')}`);
    return list.map((item, i) => featureAt(item, `features[${i}]`, spent));
  }
  if (top.type === 'Feature') return [featureAt(top, 'the feature', spent)];
  const shapes = shapesAt(top, 'the geometry', 0, spent);
  return [{ place: 'the geometry', id: null, properties: new Map(), ...shapes }];
}

function georefOf(value: unknown): Georef | null {
  const georef = (value as Plain).georef;
  if (typeof georef !== 'object' || georef === null) return null;
  const { lon, lat, bearing } = georef as Plain;
  const sound = [lon, lat, bearing].every((each) => typeof each === 'number' && Math.abs(each) <= 360);
  if (!sound || Math.abs(lon as number) > 180 || Math.abs(lat as number) > 90) return null;
  return { lon: lon as number, lat: lat as number, bearing: bearing as number };
}

function checkSystem(top: Plain): void {
  const { crs } = top;
  if (crs === undefined || crs === null) return;
  const name = objectAt(objectAt(crs, 'crs').properties, 'crs.properties').name;
  if (typeof name !== 'string' || !WGS84.test(name))
    throw new Refusal('crs', `expected WGS 84, longitude and latitude; found ${JSON.stringify(name)?.slice(0, 60)}`);
}

function featureAt(value: unknown, place: string, spent: { points: number }): GroundFeature {
  const feature = objectAt(value, place);
  if (feature.type !== 'Feature') throw new Refusal(`${place}.type`, 'expected "Feature"');
  const { id, properties, geometry } = feature;
  const own = properties === null || properties === undefined ? {} : objectAt(properties, `${place}.properties`);
  const shapes =
    geometry === null || geometry === undefined
      ? { shapes: [], holes: 0 }
      : shapesAt(objectAt(geometry, `${place}.geometry`), `${place}.geometry`, 0, spent);
  return {
    place,
    id: typeof id === 'string' || typeof id === 'number' ? String(id) : null,
    properties: new Map(Object.entries(own)),
    ...shapes,
  };
}

type Shapes = Pick<GroundFeature, 'shapes' | 'holes'>;

function shapesAt(geometry: Plain, place: string, depth: number, spent: { points: number }): Shapes {
  if (depth > BUDGET.nesting) throw new Refusal(place, `lies ${depth} collections deep`);
  const at = `${place}.coordinates`;
  const coordinates = geometry.coordinates;
  const line = (value: unknown, where: string): GroundShape => {
    const points = positionsAt(value, where, spent);
    if (points.length < 2) throw new Refusal(where, 'expected two positions or more');
    return { kind: 'line', points };
  };
  const each = (make: (value: unknown, where: string) => readonly GroundShape[]): GroundShape[] =>
    listAt(coordinates, at).flatMap((value, i) => make(value, `${at}[${i}]`));
  switch (geometry.type) {
    case 'Point':
      return { shapes: [{ kind: 'point', points: [positionAt(coordinates, at, spent)] }], holes: 0 };
    case 'MultiPoint':
      return {
        shapes: positionsAt(coordinates, at, spent).map((point) => ({ kind: 'point', points: [point] })),
        holes: 0,
      };
    case 'LineString':
      return { shapes: [line(coordinates, at)], holes: 0 };
    case 'MultiLineString':
      return { shapes: each((value, where) => [line(value, where)]), holes: 0 };
    case 'Polygon':
      return areaAt(coordinates, at, spent);
    case 'MultiPolygon': {
      const areas = listAt(coordinates, at).map((value, i) => areaAt(value, `${at}[${i}]`, spent));
      return { shapes: areas.flatMap(({ shapes }) => shapes), holes: areas.reduce((sum, { holes }) => sum + holes, 0) };
    }
    case 'GeometryCollection': {
      const parts = listAt(geometry.geometries, `${place}.geometries`).map((value, i) => {
        const where = `${place}.geometries[${i}]`;
        return shapesAt(objectAt(value, where), where, depth + 1, spent);
      });
      return { shapes: parts.flatMap(({ shapes }) => shapes), holes: parts.reduce((sum, { holes }) => sum + holes, 0) };
    }
    default:
      throw new Refusal(
        `${place}.type`,
        `expected a kind of geometry, found ${JSON.stringify(geometry.type)?.slice(0, 40)}`,
      );
  }
}

function areaAt(value: unknown, place: string, spent: { points: number }): Shapes {
  const rings = listAt(value, place).map((ring, i) => ringAt(ring, `${place}[${i}]`, spent));
  const [outer, ...inner] = rings;
  return { shapes: outer ? [{ kind: 'ring', points: outer }] : [], holes: inner.length };
}

function ringAt(value: unknown, place: string, spent: { points: number }): readonly Position[] {
  const points = positionsAt(value, place, spent);
  if (points.length < 4) throw new Refusal(place, 'expected a ring of four positions or more');
  const [first] = points;
  const last = points.at(-1);
  if (first?.[0] !== last?.[0] || first?.[1] !== last?.[1])
    throw new Refusal(place, 'expected a closed ring: its last position is not its first');
  const ring = points.slice(0, -1);
  return twiceAreaOf(ring) < 0 ? ring.reverse() : ring;
}

const positionsAt = (value: unknown, place: string, spent: { points: number }): readonly Position[] =>
  listAt(value, place).map((item, i) => positionAt(item, `${place}[${i}]`, spent));

function positionAt(value: unknown, place: string, spent: { points: number }): Position {
  if (++spent.points > BUDGET.points)
    throw new Refusal(place, `is past ${BUDGET.points.toLocaleString('en-US')} positions`);
  const [lon, lat] = listAt(value, place);
  if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat))
    throw new Refusal(place, 'expected a longitude and a latitude');
  if (Math.abs(lon) > 180 || Math.abs(lat) > 90)
    throw new Refusal(
      place,
      `expected degrees of longitude and latitude, found ${lon}, ${lat}; a projected system is not read`,
    );
  return [lon, lat];
}

function objectAt(value: unknown, place: string): Plain {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Refusal(place, 'expected an object');
  return value as Plain;
}

function listAt(value: unknown, place: string): readonly unknown[] {
  if (!Array.isArray(value)) throw new Refusal(place, 'expected a list');
  return value;
}
