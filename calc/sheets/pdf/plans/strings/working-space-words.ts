import { boxOf } from '../../../../../routing/plane/box.ts';
import { printLength } from '../../../../../routing/site/numbers/feet-inches.ts';
import { workingSpaceOf, workingSpaceSize } from '../../../../../routing/site/place/working-space.ts';
import type { Point2, Site } from '../../../../../routing/site/site.ts';
import { tablesOf } from '../../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../../tables/equipment-of.ts';
import { BLACK } from '../../kit/ink.ts';
import type { LabelPlace, LabelSize, LabelWish } from '../../kit/labels/best-label-place.ts';
import { placesAround } from '../../kit/labels/label-places.ts';
import { shows, type View } from '../../kit/view/view.ts';
import type { SpaceSide, SpaceString } from './working-space-strings.ts';

/** Round the words inside a space, points. */
const INSIDE = 3;

/**
 * Depth and width in words of each working space in a view that has no dimension string for them: one that lies askew, or
 * that has no room for strings. In the space where they go in, else beside it with a leader.
 */
export function workingSpaceWords(view: View, site: Site, strings: readonly SpaceString[]): LabelWish[] {
  const least = leastWorkingSpace(tablesOf(site.rules));
  return site.equipment.flatMap((one): LabelWish[] => {
    const [corners, size] = [workingSpaceOf(one, least), workingSpaceSize(one, least)];
    if (corners === null || size === null) return [];
    const { minX, minY, maxX, maxY } = boxOf(corners);
    const middle: Point2 = [(minX + maxX) / 2, (minY + maxY) / 2];
    if (!shows(view.window, middle)) return [];
    const isDrawn = (side: SpaceSide): boolean =>
      strings.some(({ of, measures }) => of === one.id && measures === side);
    const words = (['deep', 'wide'] as const)
      .filter((side) => !isDrawn(side))
      .map(
        (side, i) =>
          `${i === 0 ? `${one.id}: ` : ''}${printLength(side === 'deep' ? size.depth : size.width, site.units)} ${side}`,
      );
    if (words.length === 0) return [];
    const round = (Math.min(size.depth, size.width) * view.perFoot) / 2;
    return [
      {
        layer: 'dimensions',
        lines: words.map((text) => ({ text, of: one.id })),
        or: [[{ text: words.join(', '), of: one.id }]],
        size: 'small',
        colour: BLACK,
        places: (label) => placesFor(view.at(middle), corners.map(view.at), round, label),
      },
    ];
  });
}

function* placesFor([x, y]: Point2, corners: readonly Point2[], round: number, size: LabelSize): Generator<LabelPlace> {
  const { width, height } = size;
  if (Math.hypot(width, height) / 2 + INSIDE <= round) yield { at: [x - width / 2, y - height / 2], turn: 0, cost: 0 };
  for (const [i, [ax, ay]] of corners.entries()) {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    const side: Point2 = [(ax + bx) / 2, (ay + by) / 2];
    for (const place of placesAround(side, 2 * INSIDE, size, true))
      yield { ...place, cost: (place.cost ?? 0) + 1, own: 2 };
  }
}
