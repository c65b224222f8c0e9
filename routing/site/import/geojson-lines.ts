import { siteOf } from '../place/georef.ts';
import type { Georef } from '../site.ts';
import type { GroundFeature } from './geojson.ts';
import type { ImportedLine } from './imported.ts';
import { openMapLayer } from './open-map.ts';

/** The middle of what features cover, degrees, also over the 180th meridian; null where they cover nothing. */
export function middleOfGeojson(features: readonly GroundFeature[]): readonly [lon: number, lat: number] | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  let from: number | null = null;
  for (const { shapes } of features)
    for (const { points } of shapes)
      for (const [lon, lat] of points) {
        from ??= lon;
        const along = lon - from > 180 ? lon - 360 : lon - from < -180 ? lon + 360 : lon;
        west = Math.min(west, along);
        east = Math.max(east, along);
        south = Math.min(south, lat);
        north = Math.max(north, lat);
      }
  if (!(west <= east)) return null;
  const middle = (west + east) / 2;
  return [middle > 180 ? middle - 360 : middle < -180 ? middle + 360 : middle, (south + north) / 2];
}

/** The layer that a feature belongs to: what its properties call its list, layer or kind, else the kind of its shape. */
function layerOf(feature: GroundFeature): string {
  const tagged = openMapLayer(feature);
  if (tagged !== null) return tagged;
  const { properties, shapes } = feature;
  for (const name of ['list', 'layer', 'Layer', 'kind', 'type', 'class']) {
    const value = properties.get(name);
    if (typeof value === 'string' && value !== '') return value;
  }
  const [first] = shapes;
  return first?.kind === 'ring' ? 'areas' : first?.kind === 'line' ? 'lines' : 'points';
}

/** Half of the cross by which a place is drawn, feet. */
const CROSS = 1;

/** The features as lines in feet about a place on the ground; a place of no extent is a small cross. */
export function linesOfGeojson(features: readonly GroundFeature[], georef: Georef): readonly ImportedLine[] {
  return features.flatMap((feature) => {
    const layer = layerOf(feature);
    return feature.shapes.flatMap(({ kind, points }): ImportedLine[] => {
      const here = points.map((point) => siteOf(georef, point));
      if (kind !== 'point') return [{ layer, points: here, closed: kind === 'ring' }];
      const [x, y] = here[0]!;
      return [
        {
          layer,
          points: [
            [x - CROSS, y],
            [x + CROSS, y],
          ],
          closed: false,
        },
        {
          layer,
          points: [
            [x, y - CROSS],
            [x, y + CROSS],
          ],
          closed: false,
        },
      ];
    });
  });
}
