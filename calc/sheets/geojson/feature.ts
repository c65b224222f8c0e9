export type WrittenPosition = [number, number];

export type Geometry =
  | { type: 'Point'; coordinates: WrittenPosition }
  | { type: 'LineString'; coordinates: WrittenPosition[] }
  | { type: 'Polygon'; coordinates: WrittenPosition[][] };

/** A feature of GeoJSON (RFC 7946, section 3.2). */
export interface Feature {
  readonly type: 'Feature';
  readonly id: string;
  readonly geometry: Geometry;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** Where a point of the site, feet, is written. */
export type PlaceOf = (point: readonly number[]) => WrittenPosition;
