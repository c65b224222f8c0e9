import type { Georef } from '../../../routing/site/site.ts';
import type { UnderlayPicture } from '../painting/picture.ts';
import { carriedOver, onSite, type Placement, scaledAbout } from './placement.ts';

type Stated = Pick<UnderlayPicture, 'place' | 'statedFeet' | 'perInch' | 'georef'>;

/**
 * How an underlay lies by what its sheet states, on a site that lies on the ground as told: in its place, else to its scale
 * about the middle of where it lies; as it does where it states neither.
 */
export function lieAsStated(
  underlay: Placement,
  { place, statedFeet, perInch, georef }: Stated,
  site: Georef | undefined,
  { box }: Pick<UnderlayPicture, 'box'>,
): Placement {
  if (place) return { rotation: 0, ...carriedOver(place, georef, site) };
  if (statedFeet === undefined || perInch === undefined) return underlay;
  const middle = onSite(underlay, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
  return scaledAbout(underlay, middle, statedFeet / perInch / underlay.scale);
}

/** Whether an underlay lies where its sheet says, to a hundredth of a foot over the whole of it; true where it says nothing. */
export function liesAsStated(underlay: Placement, picture: UnderlayPicture, site: Georef | undefined): boolean {
  if (!picture.place) return true;
  const { box } = picture;
  const stated = lieAsStated(underlay, picture, site, picture);
  return [box.minX, box.maxX].every((x) =>
    [box.minY, box.maxY].every((y) => {
      const [a, b] = [onSite(underlay, [x, y]), onSite(stated, [x, y])];
      return Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.01;
    }),
  );
}
