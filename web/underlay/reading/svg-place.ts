import { placeInRdf } from '../../../routing/site/place/stated-place.ts';
import type { UnderlayPicture } from '../painting/picture.ts';
import { type SvgSize, viewBoxOf } from './svg-size.ts';

/**
 * Where the metadata of an SVG say that it lies, in units of its picture, y up; null where they say nothing, or where its
 * viewBox shows it stretched.
 */
export function svgPlace(text: string, { width, height }: SvgSize): Pick<UnderlayPicture, 'place' | 'georef'> | null {
  const stated = placeInRdf(text);
  if (!stated) return null;
  const [left, top, across, down] = viewBoxOf(text) ?? [0, 0, width, height];
  const perUnit = width / across;
  if (Math.abs(height / down / perUnit - 1) > 1e-3) return null;
  const { feetPerUnit, origin, turned, georef } = stated;
  return {
    place: {
      at: [0, 0],
      origin: [(origin[0] - left) * perUnit, height - (origin[1] - top) * perUnit],
      scale: feetPerUnit / perUnit,
      ...(turned !== 0 && { rotation: ((turned % 360) + 360) % 360 }),
    },
    ...(georef && { georef }),
  };
}
