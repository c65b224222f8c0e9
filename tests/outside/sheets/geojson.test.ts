import { booleanValid, distance, point } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { geojson } from '../../../calc/sheets/geojson/geojson.ts';
import { readGeojson } from '../../../routing/site/import/geojson.ts';
import { lonLatOf, siteOf } from '../../../routing/site/place/georef.ts';
import { plannedSample } from './planned-samples.ts';

describe('the GeoJSON', () => {
  const { site, planned } = plannedSample('library-lot');
  const { features } = JSON.parse(geojson(site, planned));

  test('has a valid feature for each element, by RFC 7946', () => {
    const ids = features.map(({ id }: { id: string }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([...site.stalls, ...site.drops, ...site.raceways, ...site.equipment].map(({ id }) => id)),
    );
    for (const feature of features) {
      expect(feature.type).toBe('Feature');
      expect(booleanValid(feature)).toBe(true);
    }
  });
  test('winds outer rings to the left', () => {
    const rings = features.filter(({ geometry }: { geometry: { type: string } }) => geometry.type === 'Polygon');
    for (const { geometry } of rings) {
      const [ring] = geometry.coordinates as [number, number][][];
      const area = (ring ?? [])
        .slice(1)
        .reduce((sum, [x, y], i) => sum + (ring?.[i]?.[0] ?? 0) * y - x * (ring?.[i]?.[1] ?? 0), 0);
      expect(area).toBeGreaterThan(0);
    }
  });
  test('of a site that lies nowhere says first that its coordinates are local, and no reader takes them for degrees', () => {
    const { georef: _, ...nowhere } = site;
    const text = geojson(nowhere, planned);
    const local = JSON.parse(text);
    expect(local).toMatchObject({ coordinates: 'local', units: 'ft' });
    expect(local).not.toHaveProperty('georef');
    expect(local.note).toMatch(/^Coordinates are local, in feet .* not longitude and latitude/);
    const stall = local.features.find(({ id }: { id: string }) => id === 'S01');
    // S01 is 11 ft wide and 18 ft deep with its head on the column line.
    const [xs, ys] = [0, 1].map((axis) => stall.geometry.coordinates[0].map((at: number[]) => at[axis]));
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([0, 11, 0, 18]);
    const read = readGeojson(text);
    expect(read.ok ? '' : read.fault.says).toContain('local');
  });
});

describe('the plan in the GeoJSON', () => {
  const { site, planned } = plannedSample('fleet-yard');
  const { features } = JSON.parse(geojson(site, planned)) as {
    features: { id: string; geometry: { type: string; coordinates: never[] }; properties: Record<string, unknown> }[];
  };
  const of = (list: string) => features.filter(({ properties }) => properties.list === list);

  test('has every circuit, conduit, feeder and junction of it, once', () => {
    expect(new Set(features.map(({ id }) => id)).size).toBe(features.length);
    expect(of('circuits').map(({ properties }) => properties.charger)).toEqual(planned.runs.map((run) => run.charger));
    expect(of('conduits').map(({ properties }) => properties.name)).toEqual(planned.conduits.map(({ id }) => id));
    expect(of('ways').map(({ properties }) => properties.name)).toEqual(site.feeders.map(({ id }) => id));
    expect(of('boxes')).toHaveLength(planned.boxes.filter(({ kind }) => kind === 'junction').length);
    for (const feature of features) expect(booleanValid(feature as never), feature.id).toBe(true);
  });
  test('says sizes, and names circuits and conduits both ways', () => {
    for (const { properties } of of('circuits')) {
      expect(properties.conductor).toMatch(/^\S+ (copper|aluminum) /);
      for (const name of properties.conduits as string[]) {
        const conduit = of('conduits').find((one) => one.properties.name === name)!;
        expect(conduit.properties.circuits).toContain(properties.charger);
        expect(conduit.properties.tradeSize).toMatch(/^[\d/-]+ in$/);
      }
    }
    for (const { properties } of of('ways')) expect(properties).toMatchObject({ sets: expect.any(Number) });
  });
  test('has conduits as long on the ground, level, as their paths are', () => {
    for (const [i, { geometry }] of of('conduits').entries()) {
      const at = geometry.coordinates as unknown as [number, number][];
      const metres = at.slice(1).reduce((sum, to, k) => sum + 1000 * distance(point(at[k]!), point(to)), 0);
      const { path } = planned.conduits[i]!;
      const feet = path.slice(1).reduce((sum, to, k) => sum + Math.hypot(to[0] - path[k]![0], to[1] - path[k]![1]), 0);
      expect(Math.abs(metres / 0.3048 - feet)).toBeLessThan(0.2 + feet * 0.006);
    }
  });
});

describe('places on the ground', () => {
  const georef = fc.record({
    lon: fc.double({ min: -170, max: 170, noNaN: true }),
    lat: fc.double({ min: -65, max: 65, noNaN: true }),
    bearing: fc.double({ min: -360, max: 360, noNaN: true }),
  });
  const at = fc.tuple(
    fc.double({ min: -2000, max: 2000, noNaN: true }),
    fc.double({ min: -2000, max: 2000, noNaN: true }),
  );

  test('come back to the same point of the site', () => {
    fc.assert(
      fc.property(georef, at, (where, place) => {
        const [x, y] = siteOf(where, lonLatOf(where, place));
        expect(Math.hypot(x - place[0], y - place[1])).toBeLessThan(1e-6);
      }),
    );
  });
  test('lie as far apart as on a sphere, within the ellipsoid’s half a percent', () => {
    fc.assert(
      fc.property(georef, at, (where, place) => {
        fc.pre(Math.hypot(...place) > 10);
        const kilometres = distance(point([where.lon, where.lat]), point([...lonLatOf(where, place)]));
        expect(kilometres * 1000).toBeGreaterThan(Math.hypot(...place) * 0.3048 * 0.994);
        expect(kilometres * 1000).toBeLessThan(Math.hypot(...place) * 0.3048 * 1.006);
      }),
    );
  });
  test('+y points along its bearing', () => {
    const [lon, lat] = lonLatOf({ lon: 0, lat: 0, bearing: 90 }, [0, 100]);
    expect(lon).toBeGreaterThan(0);
    expect(lat).toBeCloseTo(0, 12);
  });
});
