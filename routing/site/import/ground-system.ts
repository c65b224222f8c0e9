type Pair = readonly [x: number, y: number];

/** A system of coordinates that a GeoJSON may declare. */
export interface GroundSystem {
  /** Longitude and latitude in degrees of WGS 84. */
  readonly toDegrees: (at: Pair) => Pair;
  /** To how many decimals of a degree a coordinate is written. */
  readonly decimals: (value: number) => number;
  /** What a person should know of it; null where there is nothing. */
  readonly says: string | null;
}

/** Names of the one system that GeoJSON knows (RFC 7946, section 4), as older files spell it. */
const WGS84 = /(CRS:?84|EPSG:[\d.]*:?(4326|4979)|WGS ?84)$/i;
/** Systems of a continent that were WGS 84 and drift with its plate, by a metre or two. */
const NEAR = /(CRS:?83|EPSG:[\d.]*:?(4269|4258|4283|6318|7844|4617)|NAD ?83|ETRS ?89)$/i;
/** The square map of the web: a sphere of the equator's radius. */
const WEB_MAP = /EPSG:[\d.]*:?(3857|900913|3785|102100)$/i;
const RADIUS = 6_378_137;
const DEG = 180 / Math.PI;

const decimalsOf = (value: number): number => {
  const text = String(value);
  const [, exponent] = text.split('e');
  if (exponent !== undefined) return Math.min(15, Math.max(0, -Number(exponent)));
  return text.includes('.') ? text.length - text.indexOf('.') - 1 : 0;
};

const DEGREES: GroundSystem = { toDegrees: (at) => at, decimals: decimalsOf, says: null };

/**
 * The system that a `crs` declares, WGS 84 where there is none; in words, why it is not read. Formulas of the square
 * map: spherical Mercator (EPSG guidance note 7-2, method 1024).
 */
export function groundSystem(crs: unknown): GroundSystem | string {
  if (crs === undefined || crs === null) return DEGREES;
  const name = (crs as { readonly properties?: { readonly name?: unknown } }).properties?.name;
  if (typeof name !== 'string') return `expected the name of a system; found ${JSON.stringify(name)?.slice(0, 60)}`;
  if (WGS84.test(name)) return DEGREES;
  if (NEAR.test(name))
    return {
      ...DEGREES,
      says: `It is in ${name.slice(0, 60)}, taken as WGS 84: up to some 7 ft off the ground, not within itself.`,
    };
  if (WEB_MAP.test(name))
    return {
      toDegrees: ([x, y]) => [(x / RADIUS) * DEG, (2 * Math.atan(Math.exp(y / RADIUS)) - Math.PI / 2) * DEG],
      // A metre is some five decimals of a degree.
      decimals: (value) => decimalsOf(value) + 5,
      says: null,
    };
  return `expected WGS 84, longitude and latitude; found ${JSON.stringify(name).slice(0, 60)}: save it as GeoJSON in WGS 84 (EPSG:4326)`;
}
