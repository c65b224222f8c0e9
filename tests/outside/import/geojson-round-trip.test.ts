import { expect, test } from 'vitest';
import { geojson } from '../../../calc/sheets/geojson/geojson.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { readGeojson } from '../../../routing/site/import/geojson.ts';
import { elementsOfGeojson } from '../../../routing/site/import/geojson-elements.ts';
import { linesOfGeojson, middleOfGeojson } from '../../../routing/site/import/geojson-lines.ts';
import { PLACED_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { everyFieldText } from '../../routing/site/file/every-field.ts';
import { plannedSample } from '../sheets/planned-samples.ts';

/** Every number of two values the same to a millionth of a foot, all else exactly. */
function sameTo(a: unknown, b: unknown, place: string): void {
  if (typeof a === 'number' && typeof b === 'number') {
    expect(Math.abs(a - b), place).toBeLessThan(1e-6);
    return;
  }
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) {
    expect(a, place).toBe(b);
    return;
  }
  expect(Object.keys(a).sort(), place).toEqual(Object.keys(b).sort());
  for (const [name, value] of Object.entries(a))
    sameTo(value, (b as Record<string, unknown>)[name], `${place}.${name}`);
}

const { planned } = plannedSample('library-lot');
const everyField = readSite(everyFieldText);
if (!everyField.ok) throw new Error('the fixture is not sound');
const metric = readSite(everyFieldText.replace('"units": "ft"', '"units": "m"'));
if (!metric.ok) throw new Error('the metric fixture is not sound');

test.each([
  ['a sample', plannedSample('library-lot').site],
  ['a large sample', plannedSample('fleet-yard').site],
  ['a site with every field there is', toSite(everyField.file)],
  ['the same in metres', toSite(metric.file)],
])('%s written as GeoJSON and opened again has the same elements', (_, site) => {
  const georef = site.georef ?? { lon: -98.5, lat: 39.8, bearing: 12.5 };
  const text = geojson({ ...site, georef }, planned);
  const read = readGeojson(text);
  if (!read.ok) throw new Error(`${read.fault.place} ${read.fault.says}`);
  expect(read.value.georef).toEqual(georef);
  const elements = elementsOfGeojson(read.value.features);
  for (const list of PLACED_LISTS) sameTo(elements[list], site[list], list);
});

test('its shapes lie where the elements do, within the centimetre of seven decimals', () => {
  const { site } = plannedSample('library-lot');
  const georef = { lon: -98.5, lat: 39.8, bearing: 30 };
  const read = readGeojson(geojson({ ...site, georef }, planned));
  if (!read.ok) throw new Error(read.fault.says);
  const stalls = linesOfGeojson(read.value.features, georef).filter(({ layer }) => layer === 'stalls');
  expect(stalls).toHaveLength(site.stalls.length);
  for (const [i, { points }] of stalls.entries()) {
    const stall = site.stalls[i]!;
    const nearest = Math.min(
      ...points.map(([x, y], k) => {
        const [nx, ny] = points[(k + 1) % points.length]!;
        return Math.hypot((x + nx) / 2 - stall.at[0], (y + ny) / 2 - stall.at[1]);
      }),
    );
    expect(nearest).toBeLessThan(0.05);
  }
  const middle = middleOfGeojson(read.value.features)!;
  expect(Math.abs(middle[1] - georef.lat)).toBeLessThan(0.01);
});

test('features of other files, and with fields that no element has, hold no elements', () => {
  const feature = (properties: object) => ({ type: 'Feature', geometry: null, properties });
  const read = readGeojson(
    JSON.stringify({
      type: 'FeatureCollection',
      features: [
        feature({ list: 'stalls', units: 'ft', id: 'S1', at: [0, 0], width: -9, depth: 18, heading: 0 }),
        feature({ list: '__proto__', units: 'ft', id: 'S1' }),
        feature({ list: 'stalls', units: 'yd', id: 'S2', at: [0, 0], width: 9, depth: 18, heading: 0 }),
        feature({ name: 'kerb' }),
      ],
    }),
  );
  if (!read.ok) throw new Error(read.fault.says);
  const found = elementsOfGeojson(read.value.features);
  expect(PLACED_LISTS.flatMap((list) => [...found[list]])).toEqual([]);
});
