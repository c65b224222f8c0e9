import type { Point2, Site } from '../../../../../routing/site/site.ts';
import { GREY } from '../../kit/ink.ts';
import type { LabelWish } from '../../kit/labels/best-label-place.ts';
import { placesAlong } from '../../kit/labels/label-places.ts';
import { partIn, type View } from '../../kit/view/view.ts';

/** What an area is numbered by where nobody named it: `K1`, `A02`. */
const NUMBERED = /^[A-Za-z]{1,3}[-_ ]?\d+[a-z]?$/;

/**
 * Names of the keep-outs and drive aisles in the view that a person gave a name: a property line, an easement, a fire lane.
 * Along their longest edges, as such lines are lettered. Those that only have a number have none.
 */
export function areaWishes(view: View, site: Site): LabelWish[] {
  const named = [...site.keepouts, ...site.aisles.filter(({ kind = 'drive' }) => kind === 'drive')];
  return named
    .filter(({ id }) => !NUMBERED.test(id))
    .map(({ id, outline }) => ({
      layer: 'stallNumbers',
      lines: [{ text: id.replaceAll(/[-_]+/g, ' ').toUpperCase(), of: id }],
      size: 'small',
      colour: GREY,
      *places(size) {
        const edges = outline.flatMap((from, i) => {
          const part = partIn(view.window, from, outline[(i + 1) % outline.length]!);
          return part === null ? [] : [part.map(view.at) as [Point2, Point2]];
        });
        const length = ([[ax, ay], [bx, by]]: readonly [Point2, Point2]): number => Math.hypot(bx - ax, by - ay);
        for (const [from, to] of edges.sort((a, b) => length(b) - length(a))) yield* placesAlong(from, to, 3, size);
      },
    }));
}
