import { booleanValid, distance, point } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { geojson } from '../../../calc/sheets/geojson.ts';
import { groundOf, siteOf } from '../../../routing/site/place/georef.ts';
import { plannedSample } from './planned-samples.ts';

describe('the GeoJSON', () => {
  const { site, planned } = plannedSample('library-lot');
  const { features } = JSON.parse(geojson(site, planned) ?? '{}');

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
  test('is not written for a site that lies nowhere', () => {
    const { georef: _, ...nowhere } = site;
    expect(geojson(nowhere, planned)).toBeNull();
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
        const [x, y] = siteOf(where, groundOf(where, place));
        expect(Math.hypot(x - place[0], y - place[1])).toBeLessThan(1e-6);
      }),
    );
  });
  test('lie as far apart as on a sphere, within the ellipsoid’s half a percent', () => {
    fc.assert(
      fc.property(georef, at, (where, place) => {
        fc.pre(Math.hypot(...place) > 10);
        const kilometres = distance(point([where.lon, where.lat]), point([...groundOf(where, place)]));
        expect(kilometres * 1000).toBeGreaterThan(Math.hypot(...place) * 0.3048 * 0.994);
        expect(kilometres * 1000).toBeLessThan(Math.hypot(...place) * 0.3048 * 1.006);
      }),
    );
  });
  test('+y points along its bearing', () => {
    const [lon, lat] = groundOf({ lon: 0, lat: 0, bearing: 90 }, [0, 100]);
    expect(lon).toBeGreaterThan(0);
    expect(lat).toBeCloseTo(0, 12);
  });
});
