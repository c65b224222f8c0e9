import { twiceAreaOf } from '../../plane/area.ts';
import type { GroundFeature, GroundShape } from './geojson.ts';
import {
  BudgetSpent,
  FeatureRefused,
  type GeojsonReading,
  listAt,
  objectAt,
  type Plain,
  type Position,
} from './geojson-reading.ts';
import { BUDGET } from './imported.ts';

type Shapes = Pick<GroundFeature, 'shapes' | 'holes'>;

export function shapesAt(geometry: Plain, place: string, depth: number, reading: GeojsonReading): Shapes {
  if (depth > BUDGET.nesting) throw new FeatureRefused(place, `lies ${depth} collections deep`);
  const at = `${place}.coordinates`;
  const coordinates = geometry.coordinates;
  const line = (value: unknown, where: string): GroundShape => {
    const points = positionsAt(value, where, reading);
    if (points.length < 2) throw new FeatureRefused(where, 'expected two positions or more');
    return { kind: 'line', points };
  };
  const each = (make: (value: unknown, where: string) => readonly GroundShape[]): GroundShape[] =>
    listAt(coordinates, at).flatMap((value, i) => make(value, `${at}[${i}]`));
  switch (geometry.type) {
    case 'Point':
      return { shapes: [{ kind: 'point', points: [positionAt(coordinates, at, reading)] }], holes: 0 };
    case 'MultiPoint':
      return {
        shapes: positionsAt(coordinates, at, reading).map((point) => ({ kind: 'point', points: [point] })),
        holes: 0,
      };
    case 'LineString':
      return { shapes: [line(coordinates, at)], holes: 0 };
    case 'MultiLineString':
      return { shapes: each((value, where) => [line(value, where)]), holes: 0 };
    case 'Polygon':
      return areaAt(coordinates, at, reading);
    case 'MultiPolygon': {
      const areas = listAt(coordinates, at).map((value, i) => areaAt(value, `${at}[${i}]`, reading));
      return { shapes: areas.flatMap(({ shapes }) => shapes), holes: areas.reduce((sum, { holes }) => sum + holes, 0) };
    }
    case 'GeometryCollection': {
      const parts = listAt(geometry.geometries, `${place}.geometries`).map((value, i) => {
        const where = `${place}.geometries[${i}]`;
        return shapesAt(objectAt(value, where), where, depth + 1, reading);
      });
      return { shapes: parts.flatMap(({ shapes }) => shapes), holes: parts.reduce((sum, { holes }) => sum + holes, 0) };
    }
    default:
      throw new FeatureRefused(
        `${place}.type`,
        `expected a kind of geometry, found ${JSON.stringify(geometry.type)?.slice(0, 40)}`,
      );
  }
}

function areaAt(value: unknown, place: string, reading: GeojsonReading): Shapes {
  const rings = listAt(value, place).map((ring, i) => ringAt(ring, `${place}[${i}]`, reading));
  const [outer, ...inner] = rings;
  return { shapes: outer ? [{ kind: 'ring', points: outer }] : [], holes: inner.length };
}

function ringAt(value: unknown, place: string, reading: GeojsonReading): readonly Position[] {
  const points = positionsAt(value, place, reading);
  const [first] = points;
  const last = points.at(-1);
  const isClosed = first?.[0] === last?.[0] && first?.[1] === last?.[1];
  const ring = isClosed ? points.slice(0, -1) : [...points];
  if (ring.length < 3) throw new FeatureRefused(place, 'expected a ring of four positions or more');
  if (!isClosed) reading.opened += 1;
  return twiceAreaOf(ring) < 0 ? ring.reverse() : ring;
}

const positionsAt = (value: unknown, place: string, reading: GeojsonReading): readonly Position[] =>
  listAt(value, place).map((item, i) => positionAt(item, `${place}[${i}]`, reading));

/** So many positions tell with how many digits a file is written. */
const DIGITS_OF = 4000;

function positionAt(value: unknown, place: string, reading: GeojsonReading): Position {
  if (++reading.points > BUDGET.points)
    throw new BudgetSpent(place, `is past ${BUDGET.points.toLocaleString('en-US')} positions`);
  const [x, y] = listAt(value, place);
  if (typeof x !== 'number' || typeof y !== 'number' || !Number.isFinite(x) || !Number.isFinite(y))
    throw new FeatureRefused(place, 'expected a longitude and a latitude');
  if (reading.points <= DIGITS_OF)
    reading.decimals = Math.max(reading.decimals, reading.system.decimals(x), reading.system.decimals(y));
  const [lon, lat] = reading.system.toDegrees([x, y]);
  // Files that run over the 180th meridian count on.
  if (Math.abs(lon) > 360 || Math.abs(lat) > 90)
    throw new FeatureRefused(
      place,
      `expected degrees of longitude and latitude, found ${x}, ${y}; a projected system is not read`,
    );
  return [lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon, lat];
}
