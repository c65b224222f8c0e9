/** WGS 84: semi-major axis, metres, and flattening (NIMA TR8350.2). */
const A = 6_378_137;
const F = 1 / 298.257_223_563;
/** Scale on the central meridian, and false easting and northing of the south, metres (UTM, NGA.SIG.0012). */
const K0 = 0.9996;
const FALSE_EASTING = 500_000;
const FALSE_NORTHING = 10_000_000;

const RAD = Math.PI / 180;
const N = F / (2 - F);
/** Radius of the rectifying sphere, and Krüger's coefficients to the fourth power of the third flattening. */
const RECTIFYING = (A / (1 + N)) * (1 + N ** 2 / 4 + N ** 4 / 64);
const ALPHA = [
  N / 2 - (2 / 3) * N ** 2 + (5 / 16) * N ** 3 + (41 / 180) * N ** 4,
  (13 / 48) * N ** 2 - (3 / 5) * N ** 3 + (557 / 1440) * N ** 4,
  (61 / 240) * N ** 3 - (103 / 140) * N ** 4,
  (49_561 / 161_280) * N ** 4,
];

/** A place in Universal Transverse Mercator. */
export interface Utm {
  readonly zone: number;
  readonly isSouth: boolean;
  /** Metres. */
  readonly easting: number;
  readonly northing: number;
  /** Bearing of grid north, degrees clockwise of true north. */
  readonly convergence: number;
  /** Metres of the grid to a metre of the ground. */
  readonly scale: number;
}

/**
 * Longitude and latitude in degrees (WGS 84) in the UTM zone of that longitude, by Krüger's series (NGA.SIG.0012, section
 * 5): to a millimetre within a zone. Zones are the plain ones of six degrees, without the exceptions of the far north.
 */
export function utmOf(lon: number, lat: number): Utm {
  const zone = Math.min(60, Math.max(1, Math.floor((lon + 180) / 6) + 1));
  const isSouth = lat < 0;
  const away = (lon - (6 * zone - 183)) * RAD;
  const e = Math.sqrt(F * (2 - F));
  const sin = Math.sin(lat * RAD);
  // Tangent of the conformal latitude.
  const t = Math.sinh(Math.atanh(sin) - e * Math.atanh(e * sin));
  const xi = Math.atan2(t, Math.cos(away));
  const eta = Math.asinh(Math.sin(away) / Math.hypot(t, Math.cos(away)));
  let [x, y, p, q] = [eta, xi, 1, 0];
  ALPHA.forEach((alpha, i) => {
    const j = 2 * (i + 1);
    x += alpha * Math.cos(j * xi) * Math.sinh(j * eta);
    y += alpha * Math.sin(j * xi) * Math.cosh(j * eta);
    p += j * alpha * Math.cos(j * xi) * Math.cosh(j * eta);
    q += j * alpha * Math.sin(j * xi) * Math.sinh(j * eta);
  });
  const tau = Math.tan(lat * RAD);
  const turned = Math.atan2(Math.tan(away) * t, Math.sqrt(1 + t * t)) + Math.atan2(q, p);
  const stretched =
    (RECTIFYING / A) *
    Math.hypot(p, q) *
    ((Math.sqrt(1 - (e * sin) ** 2) * Math.sqrt(1 + tau * tau)) / Math.hypot(t, Math.cos(away)));
  return {
    zone,
    isSouth,
    easting: FALSE_EASTING + K0 * RECTIFYING * x,
    northing: (isSouth ? FALSE_NORTHING : 0) + K0 * RECTIFYING * y,
    convergence: turned / RAD,
    scale: K0 * stretched,
  };
}
