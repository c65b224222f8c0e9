import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Thumbnail } from '../../document/keeping/store/storage-records.ts';

/** Points of a line; what is more than x and y is not drawn. */
export type ThumbnailLine = readonly (readonly [number, number, ...unknown[]])[];

/** The box that a plan is fitted into, in units of its paths; a unit is the least that is drawn. */
export const WIDTH = 240;
export const HEIGHT = 150;
const EDGE = 4;
/** Lines of one kind; of more, every so many is drawn. */
const MOST_LINES = 1500;

/** A site's plan in a few paths, small enough to be kept beside it. */
export function thumbnailOf(site: Site): Thumbnail {
  const stalls = site.stalls.map((stall): ThumbnailLine => stallRectangle(stall));
  const steel = site.members.map(({ from, to }): ThumbnailLine => [from, to]);
  const raceways = site.raceways.map(({ path }): ThumbnailLine => path);
  const drops = site.drops.map(({ box }): ThumbnailLine => [box]);
  const place = inThumbnail([...stalls, ...steel, ...raceways, ...drops].flat());
  return {
    width: WIDTH,
    height: HEIGHT,
    stalls: pathOf(stalls, place, 'Z'),
    steel: pathOf(steel, place, ''),
    raceways: pathOf(raceways, place, ''),
    // A line of no length with round ends is a dot.
    drops: pathOf(drops, place, 'h0'),
  };
}

/** Where a point of the site lies in the box, y down. */
export function inThumbnail(points: ThumbnailLine): (point: ThumbnailLine[number]) => string {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  const scale = Math.min((WIDTH - 2 * EDGE) / (right - left || 1), (HEIGHT - 2 * EDGE) / (top - bottom || 1));
  const [midX, midY] = [(left + right) / 2, (bottom + top) / 2];
  return ([x, y]) => `${Math.round(WIDTH / 2 + (x - midX) * scale)} ${Math.round(HEIGHT / 2 - (y - midY) * scale)}`;
}

/** Lines as one path, alike ones once; of very many every so many. */
export function pathOf(
  lines: readonly ThumbnailLine[],
  place: (point: ThumbnailLine[number]) => string,
  end: string,
): string {
  const every = Math.ceil(lines.length / MOST_LINES);
  const drawn = new Set<string>();
  for (let i = 0; i < lines.length; i += every) drawn.add(`M${lines[i]!.map(place).join('L')}${end}`);
  return [...drawn].join('');
}
