import { kept } from '../../../../routing/kept/kept.ts';
import { type Box, boxOf, widened } from '../../../../routing/plane/box.ts';
import { dimensionLine } from '../../../../routing/site/kinds/dimensions.ts';
import { BOUNDARY_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import { boundaryDistance, isSetOut } from '../../../../routing/standing/boundary-distance.ts';
import { footprintOf } from '../../../../routing/standing/footprint.ts';
import { boundaryLayer } from '../../drawing/layers.ts';
import { BLACK, GREY } from '../kit/ink.ts';
import type { LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAlong } from '../kit/labels/label-places.ts';
import { partIn, type View } from '../kit/view/view.ts';

/** What each boundary in the view is, and its name, along its longest straight there. */
export const boundaryWishes = (view: View, site: Site): LabelWish[] =>
  site.boundaries.map(({ id, kind = 'property', name, path }) => {
    const layer = boundaryLayer(kind);
    const words = BOUNDARY_WORDS[kind].toUpperCase();
    return {
      layer,
      lines: [{ text: name === undefined ? words : `${words}: ${name}`, of: id }],
      size: 'small',
      colour: layer === 'property' ? BLACK : GREY,
      *places(size) {
        const legs = path.slice(1).flatMap((to, i) => {
          const part = partIn(view.window, path[i]!, to);
          return part === null ? [] : [part.map(view.at) as [Point2, Point2]];
        });
        const length = ([[ax, ay], [bx, by]]: readonly [Point2, Point2]): number => Math.hypot(bx - ax, by - ay);
        for (const [from, to] of legs.sort((a, b) => length(b) - length(a))) yield* placesAlong(from, to, 3, size);
      },
    };
  });

/** Nearer than this, feet, there is nothing to write a distance over. */
const LEAST = 0.5;

/** Dimensions from each new piece of equipment to the property or right-of-way line that is nearest to it. */
export function boundaryDimensions(site: Site): Site['dimensions'] {
  const lines = site.boundaries.filter(({ kind }) => boundaryLayer(kind) === 'property');
  if (lines.length === 0) return [];
  const standing = site.equipment.map((one) => widened(boxOf(footprintOf(one)), CLEAR));
  return site.equipment.filter(isSetOut).flatMap((one): Site['dimensions'] => {
    const [nearest] = lines.map((line) => boundaryDistance(one, line)).sort((a, b) => a.feet - b.feet);
    if (nearest === undefined || nearest.feet < LEAST) return [];
    const { boundary, from, to } = nearest;
    const at = (offset: number): Dimension => ({ id: `${one.id} to ${boundary.id}`, from, to, offset });
    const offset = ASIDE.find((aside) => !standing.some((box) => contains(box, middleOf(at(aside))))) ?? 0;
    return [at(offset)];
  });
}

/** How far aside a distance is drawn until its figure stands on no equipment, feet; and how clear of it. */
const ASIDE = [0, 3, -3, 6, -6, 10, -10];
const CLEAR = 1.5;

type Dimension = Site['dimensions'][number];

function middleOf(dimension: Dimension): Point2 {
  const [[ax, ay], [bx, by]] = dimensionLine(dimension);
  return [(ax + bx) / 2, (ay + by) / 2];
}

const contains = ({ minX, minY, maxX, maxY }: Box, [x, y]: Point2): boolean =>
  x > minX && x < maxX && y > minY && y < maxY;

/** How far new equipment stands from the boundary is dimensioned on the plans as if a person had. */
export const withDistances = kept((site: Site): Site => {
  const distances = boundaryDimensions(site);
  return distances.length === 0 ? site : { ...site, dimensions: [...site.dimensions, ...distances] };
});
