import type { Box } from '../../../routing/plane/box.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import { siteOf } from '../../../routing/site/place/georef.ts';
import type { Georef, Point2, Underlay } from '../../../routing/site/site.ts';

/** The part of an underlay's placing that says where it lies; lengths in feet. */
export type Placement = Pick<Underlay, 'at' | 'origin' | 'scale' | 'rotation'>;

/** Where a point of the file, in its own units, lies on the site. */
export function onSite({ at, origin = [0, 0], scale, rotation = 0 }: Placement, [px, py]: Point2): Point2 {
  const [cos, sin] = direction(rotation);
  const u = (px - origin[0]) * scale;
  const v = (py - origin[1]) * scale;
  return [at[0] + u * cos - v * sin, at[1] + u * sin + v * cos];
}

/** The point of the file, in its own units, that lies at a point of the site. */
export function inUnderlay({ at, origin = [0, 0], scale, rotation = 0 }: Placement, [x, y]: Point2): Point2 {
  const [cos, sin] = direction(rotation);
  const dx = x - at[0];
  const dy = y - at[1];
  return [origin[0] + (dx * cos + dy * sin) / scale, origin[1] + (dy * cos - dx * sin) / scale];
}

export const cornersOf = ({ minX, minY, maxX, maxY }: Box): readonly [Point2, Point2, Point2, Point2] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

/** The box on the site round a box of the file. */
export const boxOnSite = (placement: Placement, box: Box): Box =>
  boxOf(cornersOf(box).map((corner) => onSite(placement, corner)));

/** The box of the file round a box of the site. */
export const boxInUnderlay = (placement: Placement, box: Box): Box =>
  boxOf(cornersOf(box).map((corner) => inUnderlay(placement, corner)));

/** Moved so that it is as large as asked about a point of the site, which stays where it is. */
export function scaledAbout(placement: Placement, about: Point2, factor: number): Placement {
  const [x, y] = placement.at;
  return {
    ...placement,
    scale: placement.scale * factor,
    at: [about[0] + (x - about[0]) * factor, about[1] + (y - about[1]) * factor],
  };
}

/** Turned by degrees about a point of the site. */
export function turnedAbout(placement: Placement, about: Point2, degrees: number): Placement {
  const [cos, sin] = direction(degrees);
  const dx = placement.at[0] - about[0];
  const dy = placement.at[1] - about[1];
  return {
    ...placement,
    rotation: ((((placement.rotation ?? 0) + degrees) % 360) + 360) % 360,
    at: [about[0] + dx * cos - dy * sin, about[1] + dx * sin + dy * cos],
  };
}

/** Degrees by which a line from one point to another is to be turned to lie along the nearest axis. */
export function turnToAxis([ax, ay]: Point2, [bx, by]: Point2): number {
  const degrees = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return Math.round(degrees / 90) * 90 - degrees;
}

/**
 * Where what says its place on one site lies on another: by the ground where both say where they lie on it, else as if the
 * two were one.
 */
export function carriedOver(place: Placement, from: Georef | undefined, to: Georef | undefined): Placement {
  if (!from || !to || (from.lon === to.lon && from.lat === to.lat && from.bearing === to.bearing)) return place;
  const origin = turnedAbout(place, [0, 0], to.bearing - from.bearing);
  const [x, y] = siteOf(to, [from.lon, from.lat]);
  return { ...origin, at: [origin.at[0] + x, origin.at[1] + y] };
}
