import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGeojson } from '../../../../routing/site/import/geojson.ts';
import { linesOfGeojson, middleOfGeojson } from '../../../../routing/site/import/geojson-lines.ts';

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
    expect(faultOf({ type: 'Circle' })).toMatch(/^the geometry\.type: expected a kind of geometry/);
    expect(faultOf(collection({ type: 'Polygon', coordinates: [ring.slice(0, 2)] }))).toBe(
      'features[0].geometry.coordinates[0]: expected a ring of four positions or more',
    );
    expect(faultOf(collection({ type: 'Point', coordinates: [2_000_000, 600_000] }))).toMatch(
      /a projected system is not read$/,
    );
    expect(faultOf({ ...collection(), crs: { properties: { name: 'urn:ogc:def:crs:EPSG::2263' } } })).toMatch(/^crs: /);
    expect(faultOf({ ...collection(), crs: { properties: { name: 'urn:ogc:def:crs:OGC:1.3:CRS84' } } })).toBe('read');
    expect(readGeojson('{"type":"Point","coordinates":[1e999,0]}').ok).toBe(false);
    expect(readGeojson('').ok).toBe(false);
  });
  it('of another kind is named, with the cure', () => {
    expect(faultOf({ type: 'Topology', objects: {} })).toBe('the file: is TopoJSON: save it as GeoJSON');
    expect(faultOf({ geometryType: 'polygon', spatialReference: { wkid: 2263 }, features: [] })).toMatch(
      /^the file: is the JSON of a map server/,
    );
  });
  it('with one open ring, or one feature that cannot be read, is shown for the rest, and that is counted', () => {
    const off = [...ring.slice(0, 4), [-98.00003, 39]];
    const got = read(
      collection(
        { type: 'Polygon', coordinates: [off] },
        { type: 'Polygon', coordinates: [ring] },
        { type: 'Circle' },
        { type: 'Point', coordinates: ['a', 1] },
      ),
    );
    if (!got.ok) throw new Error(got.fault.says);
    expect(got.value.features.map(({ shapes }) => shapes[0]!.points.length)).toEqual([5, 4]);
    expect(got.value.notes).toEqual([
      '1 open ring closed.',
      'Left out: 2 features that cannot be read, the first at features[2].geometry.type: expected a kind of geometry, found "Circle".',
    ]);
  });
  it('of one feature to a line is read (RFC 8142)', () => {
    const feature = (lon: number): string =>
      JSON.stringify({ type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [lon, 1] } });
    for (const text of [`${feature(1)}\n${feature(2)}\n`, `\u001e${feature(1)}\n\u001e${feature(2)}\n`]) {
      const got = readGeojson(text);
      expect(got.ok && got.value.features.length).toBe(2);
    }
  });
  it('in a system that is near enough is taken with a word, and so is the square map of the web', () => {
    const at = (name: string, coordinates: readonly number[]) => {
      const got = read({ ...collection({ type: 'Point', coordinates }), crs: { type: 'name', properties: { name } } });
      if (!got.ok) throw new Error(got.fault.says);
      return { point: got.value.features[0]!.shapes[0]!.points[0]!, notes: got.value.notes };
    };
    for (const name of ['urn:ogc:def:crs:EPSG::4269', 'urn:ogc:def:crs:OGC:1.3:CRS83', 'EPSG:4258'])
      expect(at(name, [-98, 39])).toEqual({ point: [-98, 39], notes: [expect.stringMatching(/taken as WGS 84/)] });
    // Worked example of the square map: 100 deg 20' W, 24 deg 22' 54.433" N (EPSG guidance note 7-2, 3.2.1.2).
    const { point, notes } = at('urn:ogc:def:crs:EPSG::3857', [-11_169_055.58, 2_800_000]);
    expect(notes).toEqual([]);
    expect(point[0]).toBeCloseTo(-(100 + 20 / 60), 6);
    expect(point[1]).toBeCloseTo(24 + 22 / 60 + 54.433 / 3600, 6);
    expect(faultOf({ ...collection(), crs: { properties: { name: 'EPSG:2263' } } })).toMatch(
      /save it as GeoJSON in WGS 84/,
    );
  });
  it('that lies on both sides of the 180th meridian is one place', () => {
    const lot = (west: number, east: number) => ({
      type: 'Polygon',
      coordinates: [
        [
          [west, 52],
          [east, 52],
          [east, 52.0005],
          [west, 52.0005],
          [west, 52],
        ],
      ],
    });
    for (const geometries of [[lot(179.9995, 180), lot(-180, -179.9995)], [lot(179.9995, 180.0005)]]) {
      const got = read(collection(...geometries));
      if (!got.ok) throw new Error(got.fault.says);
      const [lon, lat] = middleOfGeojson(got.value.features)!;
      expect(Math.abs(Math.abs(lon) - 180)).toBeLessThan(1e-9);
      expect(lat).toBeCloseTo(52.00025, 9);
      const xs = linesOfGeojson(got.value.features, { lon, lat, bearing: 0 }).flatMap(({ points }) =>
        points.map(([x]) => x),
      );
      // A thousandth of a degree of longitude at 52 degrees is 225 ft.
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(225.3, 0);
    }
  });
  it('tells with how many digits it is written', () => {
    const digits = (lon: number): number => {
      const got = read({ type: 'Point', coordinates: [lon, 39] });
      return got.ok ? got.value.rounding : Number.NaN;
    };
    for (const [lon, half] of [
      [-98.123456, 0.5e-6],
      [-98.12345, 0.5e-5],
      [-98, 0.5],
    ] as const)
      expect(digits(lon) / half).toBeCloseTo(1, 9);
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
