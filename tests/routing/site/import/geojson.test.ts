import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGeojson } from '../../../../routing/site/import/geojson.ts';

const ring = [
  [-98, 39],
  [-97.999, 39],
  [-97.999, 39.001],
  [-98, 39.001],
  [-98, 39],
];
const collection = (...geometries: unknown[]) => ({
  type: 'FeatureCollection',
  features: geometries.map((geometry, i) => ({ type: 'Feature', id: i, properties: { layer: 'kerb' }, geometry })),
});
const read = (value: unknown) => readGeojson(JSON.stringify(value));
const faultOf = (value: unknown): string => {
  const got = read(value);
  return got.ok ? 'read' : `${got.fault.place}: ${got.fault.says}`;
};

describe('a GeoJSON', () => {
  it('is taken apart, rings to the left whichever way they ran', () => {
    const got = read(
      collection(
        { type: 'Polygon', coordinates: [ring, ring] },
        { type: 'MultiPolygon', coordinates: [[[...ring].reverse()]] },
        {
          type: 'GeometryCollection',
          geometries: [
            {
              type: 'MultiPoint',
              coordinates: [
                [1, 2],
                [3, 4],
              ],
            },
          ],
        },
        null,
      ),
    );
    if (!got.ok) throw new Error(got.fault.says);
    expect(got.value.features.map(({ shapes, holes }) => [shapes.length, holes])).toEqual([
      [1, 1],
      [1, 0],
      [2, 0],
      [0, 0],
    ]);
    expect(got.value.features[1]?.shapes[0]?.points).toHaveLength(4);
    const twice = (points: readonly (readonly [number, number])[]) =>
      points.reduce((sum, [x, y], i) => {
        const [nx, ny] = points[(i + 1) % points.length]!;
        return sum + x * ny - nx * y;
      }, 0);
    for (const { shapes } of got.value.features.slice(0, 2)) expect(twice(shapes[0]!.points)).toBeGreaterThan(0);
  });
  it('that is not as the standard has it is refused with the place', () => {
    expect(faultOf({ type: 'Topology' })).toMatch(/^the geometry\.type: expected a kind of geometry/);
    expect(faultOf(collection({ type: 'Polygon', coordinates: [ring.slice(0, 4)] }))).toBe(
      'features[0].geometry.coordinates[0]: expected a closed ring: its last position is not its first',
    );
    expect(faultOf(collection({ type: 'Point', coordinates: [2_000_000, 600_000] }))).toMatch(
      /a projected system is not read$/,
    );
    expect(faultOf({ ...collection(), crs: { properties: { name: 'urn:ogc:def:crs:EPSG::2263' } } })).toMatch(/^crs: /);
    expect(faultOf({ ...collection(), crs: { properties: { name: 'urn:ogc:def:crs:OGC:1.3:CRS84' } } })).toBe('read');
    expect(readGeojson('{"type":"Point","coordinates":[1e999,0]}').ok).toBe(false);
    expect(readGeojson('').ok).toBe(false);
  });
  it('that lies deeper than any file is refused', () => {
    const deep = (n: number): unknown =>
      n === 0 ? { type: 'Point', coordinates: [0, 0] } : { type: 'GeometryCollection', geometries: [deep(n - 1)] };
    expect(faultOf(deep(40))).toMatch(/collections deep$/);
    expect(readGeojson('['.repeat(500_000)).ok).toBe(false);
    expect(readGeojson('{"type":'.repeat(200_000)).ok).toBe(false);
  });
  it('of any JSON, or a sound one with parts changed, is read or refused, never more', () => {
    const sound = collection({ type: 'Polygon', coordinates: [ring] }, { type: 'LineString', coordinates: ring });
    const finite = (text: string) => {
      const got = readGeojson(text);
      if (!got.ok) {
        expect(got.fault.says).not.toBe('');
        return;
      }
      for (const { shapes } of got.value.features)
        for (const { points } of shapes)
          for (const [lon, lat] of points) expect(Math.abs(lon) + Math.abs(lat)).toBeLessThanOrEqual(270);
    };
    fc.assert(fc.property(fc.json(), finite), { numRuns: 200 });
    fc.assert(
      fc.property(
        fc.nat(400),
        fc.nat(12),
        fc.oneof(fc.string({ maxLength: 6 }), fc.constantFrom('null', '[]', '{}', '1e999', '"Point"', '-')),
        (at, cut, put) => {
          const text = JSON.stringify(sound);
          finite(text.slice(0, at) + put + text.slice(at + cut));
        },
      ),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.nat(5), fc.jsonValue(), (at, value) => {
        const spoiled = JSON.parse(JSON.stringify(sound));
        const feature = spoiled.features[at % 2];
        if (at < 2) feature.geometry.coordinates = value;
        else if (at < 4) feature.geometry = value;
        else feature.properties = value;
        finite(JSON.stringify(spoiled));
      }),
      { numRuns: 200 },
    );
  });
});
