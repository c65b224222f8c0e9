import { METRES_PER_FOOT } from '../numbers/units.ts';
import type { Georef, Point2 } from '../site.ts';

/** WGS 84: semi-major axis, metres, and first eccentricity squared (NIMA TR8350.2). */
const A = 6_378_137;
const E2 = 0.006_694_379_990_14;
const RAD = Math.PI / 180;

interface Frame {
  /** Degrees of longitude and latitude a foot east and a foot north. */
  readonly east: number;
  readonly north: number;
  readonly cos: number;
  readonly sin: number;
}

function frameOf({ lat, bearing }: Georef): Frame {
  const s = Math.sin(lat * RAD);
  const w = Math.sqrt(1 - E2 * s * s);
  const meridian = (A * (1 - E2)) / w ** 3;
  const parallel = (A / w) * Math.cos(lat * RAD);
  return {
    east: METRES_PER_FOOT / (parallel * RAD),
    north: METRES_PER_FOOT / (meridian * RAD),
    cos: Math.cos(bearing * RAD),
    sin: Math.sin(bearing * RAD),
  };
}

/**
 * Longitude and latitude of a point of the site, degrees: the flat frame of the ellipsoid's two radii of curvature at
 * the origin, +y turned to its compass bearing. Past 2,000 ft from the origin it is off by over 0.1 ft. `siteOf` inverts it by the same numbers.
 */
export function lonLatOf(georef: Georef, [x, y]: Point2): readonly [lon: number, lat: number] {
  const { east, north, cos, sin } = frameOf(georef);
  return [georef.lon + (x * cos + y * sin) * east, georef.lat + (y * cos - x * sin) * north];
}

/** The point of the site, feet, at a longitude and latitude in degrees. */
export function siteOf(georef: Georef, [lon, lat]: readonly [lon: number, lat: number]): Point2 {
  const { east, north, cos, sin } = frameOf(georef);
  // The shorter way round: a site may lie on both sides of the 180th meridian.
  const past = lon - georef.lon;
  const e = (past > 180 ? past - 360 : past < -180 ? past + 360 : past) / east;
  const n = (lat - georef.lat) / north;
  return [e * cos - n * sin, e * sin + n * cos];
}
