import { direction } from '../../../routing/plane/direction.ts';
import { METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import { utmOf } from '../../../routing/site/place/utm.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Georef } from '../../../routing/site/site.ts';
import { steady } from '../../words/steady.ts';
import { of, real, type StepValue, type StepWriter, stepText, word } from './step.ts';

/** The direction of true north in the plane of the site; null where it does not say. */
export function trueNorth(writer: StepWriter, georef: Georef | undefined): StepValue {
  if (!georef) return null;
  // +y lies `bearing` degrees clockwise of north, so north lies as many counter-clockwise of +y.
  return of(
    writer.add(
      'IFCDIRECTION',
      direction(90 + georef.bearing).map((value) => real(steady(value))),
    ),
  );
}

/**
 * Where the origin of the site lies in the UTM zone of its longitude, on WGS 84 (EPSG 326zz, 327zz in the south), which
 * way its +x runs there, and metres of the grid to its unit of length. The file of a site knows no height above a datum:
 * that of the origin is 0.
 */
export function addGeoreference(writer: StepWriter, context: number, georef: Georef, units: Units): void {
  const { zone, isSouth, easting, northing, convergence, scale } = utmOf(georef.lon, georef.lat);
  const digits = String(zone).padStart(2, '0');
  const metre = writer.add('IFCSIUNIT', '*', word('LENGTHUNIT'), null, word('METRE'));
  const crs = writer.add(
    'IFCPROJECTEDCRS',
    stepText(`EPSG:${isSouth ? 327 : 326}${digits}`),
    stepText(`WGS 84 / UTM zone ${zone}${isSouth ? 'S' : 'N'}`),
    stepText('WGS84'),
    null,
    stepText('UTM'),
    stepText(`${zone}${isSouth ? 'S' : 'N'}`),
    of(metre),
  );
  // Of +x, counter-clockwise of grid east: +y lies `bearing` clockwise of true north, grid north `convergence`.
  const [abscissa, ordinate] = direction(convergence - georef.bearing);
  const unit = units === 'm' ? 1 : METRES_PER_FOOT;
  writer.add(
    'IFCMAPCONVERSION',
    of(context),
    of(crs),
    ...[easting, northing, 0, abscissa, ordinate, unit * scale].map((value) => real(steady(value))),
  );
}

/** Degrees, minutes, seconds and millionths of a second, all of one sign, as a compound plane angle. */
export function compoundAngle(degrees: number): StepValue {
  const sign = degrees < 0 ? -1 : 1;
  let rest = Math.round(Math.abs(degrees) * 3600e6);
  const parts = [3600e6, 60e6, 1e6, 1].map((unit) => {
    const count = Math.floor(rest / unit);
    rest -= count * unit;
    return { whole: count === 0 ? 0 : sign * count };
  });
  return parts;
}
