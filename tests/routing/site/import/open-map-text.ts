import { lonLatOf } from '../../../../routing/site/place/georef.ts';
import type { Point2 } from '../../../../routing/site/site.ts';

/** A lot of 240 by 120 ft with an aisle, a building beside it and a road, as an open map publishes them. */
const georef = { lon: -98.5, lat: 39.8, bearing: 0 };
const on = (points: readonly Point2[]): readonly (readonly number[])[] =>
  points.map((at) => lonLatOf(georef, at).map((degrees) => Number(degrees.toFixed(7))));
const box = (x0: number, y0: number, x1: number, y1: number) => ({
  type: 'Polygon',
  coordinates: [
    on([
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
      [x0, y0],
    ]),
  ],
});
const feature = (properties: object, geometry: object) => ({ type: 'Feature', properties, geometry });

export const openMapText = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    feature({ amenity: 'parking', parking: 'surface', name: 'North lot' }, box(0, 0, 240, 120)),
    feature(
      { tags: { highway: 'service', service: 'parking_aisle' } },
      {
        type: 'LineString',
        coordinates: on([
          [10, 60],
          [230, 60],
        ]),
      },
    ),
    feature({ building: 'yes' }, box(250, 0, 300, 120)),
    feature(
      { highway: 'residential' },
      {
        type: 'LineString',
        coordinates: on([
          [-50, -30],
          [350, -30],
        ]),
      },
    ),
  ],
});
