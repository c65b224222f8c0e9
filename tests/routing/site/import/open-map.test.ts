import { expect, it } from 'vitest';
import { readGeojson } from '../../../../routing/site/import/geojson.ts';
import { linesOfGeojson } from '../../../../routing/site/import/geojson-lines.ts';
import { openMapOf } from '../../../../routing/site/import/open-map.ts';
import { openMapText } from './open-map-text.ts';

const read = readGeojson(openMapText);
if (!read.ok) throw new Error(read.fault.says);
const { features } = read.value;

it('an open map is told apart by its tags, its own or under `tags`', () => {
  const { lots, aisles, buildings, name } = openMapOf(features);
  expect([lots.length, aisles.length, buildings.length]).toEqual([1, 1, 1]);
  expect(name).toBe('North lot');
});
it('its layers have the names of what they hold', () => {
  const layers = linesOfGeojson(features, { lon: -98, lat: 39, bearing: 0 }).map(({ layer }) => layer);
  expect([...new Set(layers)]).toEqual(['parking lots', 'aisles', 'buildings', 'roads and paths']);
});
it('a garage is no lot with kerbs, and a file without tags has none', () => {
  const garage = readGeojson(openMapText.replace('"surface"', '"underground"'));
  expect(garage.ok && openMapOf(garage.value.features).lots).toEqual([]);
  expect(openMapOf([])).toEqual({ lots: [], aisles: [], buildings: [], name: null });
});
