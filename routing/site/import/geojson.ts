import { counted } from '../../words/counted.ts';
import type { Georef } from '../site.ts';
import {
  BudgetSpent,
  FeatureRefused,
  type GeojsonReading,
  listAt,
  objectAt,
  type Plain,
  type Position,
} from './geojson-reading.ts';
import { shapesAt } from './geojson-shapes.ts';
import { groundSystem } from './ground-system.ts';
import { BUDGET, type Imported, refused } from './imported.ts';

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

/**
 * The features of a GeoJSON text (RFC 7946), each geometry taken apart; also one feature to a line (RFC 8142). Rings
 * wound the other way are turned and open ones closed. Features that cannot be read are left out and told, unless there
 * is no other: the fault names its place then, as it does of a file that is no GeoJSON, is in a system that is not
 * read, or is past the budget. Never throws.
 */
export function readGeojson(text: string): Imported<GroundFile> {
  if (text.length > BUDGET.characters)
    return refused('the file', `is over ${BUDGET.characters / 1e6} million characters`);
  const value = parsed(text.replace(/^\uFEFF/, ''));
  if (!value.ok) return value;
  try {
    return { ok: true, value: groundFile(value.value) };
  } catch (error) {
    if (error instanceof FeatureRefused) return refused(error.place, error.message);
    throw error;
  }
}

function parsed(text: string): Imported<unknown> {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    try {
      const lines = text
        .replaceAll('\u001e', '\n')
        .split('\n')
        .filter((line) => line.trim() !== '');
      if (lines.length < 2) throw error;
      return { ok: true, value: { type: 'FeatureCollection', features: lines.map((line) => JSON.parse(line)) } };
    } catch {
      return refused('the file', `is not JSON: ${error instanceof Error ? error.message : 'it cannot be read'}`);
    }
  }
}

function groundFile(value: unknown): GroundFile {
  const top = objectAt(value, 'the file');
  if (top.type === 'Topology') throw new FeatureRefused('the file', 'is TopoJSON: save it as GeoJSON');
  if (top.type === undefined && (top.geometryType !== undefined || top.spatialReference !== undefined))
    throw new FeatureRefused('the file', 'is the JSON of a map server, not GeoJSON: ask the server for GeoJSON');
  if (top.coordinates === 'local' && top.type === 'FeatureCollection')
    throw new FeatureRefused(
      'the file',
      'was written from a site that lies nowhere, in its own local coordinates: open the site file',
    );
  const system = groundSystem(top.crs);
  if (typeof system === 'string') throw new FeatureRefused('crs', system);
  const reading: GeojsonReading = { points: 0, opened: 0, decimals: 0, system };
  const { features, left, first } = featuresIn(top, reading);
  if (first && features.length === 0) throw first;
  return {
    features,
    georef: georefOf(value),
    rounding: 0.5 * 10 ** -reading.decimals,
    notes: [
      ...(system.says === null ? [] : [system.says]),
      ...(reading.opened > 0 ? [`${counted(reading.opened, 'open ring')} closed.`] : []),
      ...(first
        ? [`Left out: ${counted(left, 'feature')} that cannot be read, the first at ${first.place}: ${first.message}.`]
        : []),
    ],
  };
}

interface Found {
  readonly features: readonly GroundFeature[];
  readonly left: number;
  readonly first: FeatureRefused | null;
}

function featuresIn(top: Plain, reading: GeojsonReading): Found {
  if (top.type === 'FeatureCollection') {
    const list = listAt(top.features, 'features');
    if (list.length > BUDGET.entities)
      throw new BudgetSpent('features', `holds more than ${BUDGET.entities.toLocaleString('en-US')}`);
    const features: GroundFeature[] = [];
    let [left, first] = [0, null as FeatureRefused | null];
    for (const [i, item] of list.entries())
      try {
        features.push(featureAt(item, `features[${i}]`, reading));
      } catch (error) {
        if (!(error instanceof FeatureRefused) || error instanceof BudgetSpent) throw error;
        first ??= error;
        left += 1;
      }
    return { features, left, first };
  }
  if (top.type === 'Feature') return { features: [featureAt(top, 'the feature', reading)], left: 0, first: null };
  const shapes = shapesAt(top, 'the geometry', 0, reading);
  return { features: [{ place: 'the geometry', id: null, properties: new Map(), ...shapes }], left: 0, first: null };
}

function georefOf(value: unknown): Georef | null {
  const georef = (value as Plain).georef;
  if (typeof georef !== 'object' || georef === null) return null;
  const { lon, lat, bearing } = georef as Plain;
  const sound = [lon, lat, bearing].every((each) => typeof each === 'number' && Math.abs(each) <= 360);
  if (!sound || Math.abs(lon as number) > 180 || Math.abs(lat as number) > 90) return null;
  return { lon: lon as number, lat: lat as number, bearing: bearing as number };
}

function featureAt(value: unknown, place: string, reading: GeojsonReading): GroundFeature {
  const feature = objectAt(value, place);
  if (feature.type !== 'Feature') throw new FeatureRefused(`${place}.type`, 'expected "Feature"');
  const { id, properties, geometry } = feature;
  const own = properties === null || properties === undefined ? {} : objectAt(properties, `${place}.properties`);
  const shapes =
    geometry === null || geometry === undefined
      ? { shapes: [], holes: 0 }
      : shapesAt(objectAt(geometry, `${place}.geometry`), `${place}.geometry`, 0, reading);
  return {
    place,
    id: typeof id === 'string' || typeof id === 'number' ? String(id) : null,
    properties: new Map(Object.entries(own)),
    ...shapes,
  };
}

export interface GroundFile {
  readonly features: readonly GroundFeature[];
  /** Where [0, 0] of the site that the file was written from lies; null in any other file. */
  readonly georef: Georef | null;
  /** Half of the last digit that its coordinates are written with, degrees. */
  readonly rounding: number;
  /** What a person should know of how it was read, in sentences. */
  readonly notes: readonly string[];
}
