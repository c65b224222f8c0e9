import { type Box, boxesMeet, boxOf, joinedBox, widened } from '../../../routing/plane/box.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { ElementList } from '../../../routing/site/schema.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';
import { stallRectangle } from '../../../routing/standing/parked.ts';
import type { ChangedElement } from '../../plan/revision.ts';

/**
 * The areas of the plan that a revision changed: round every element that it added, moved or changed, and round the place
 * of what it removed (from the version before), with so many feet to spare. Areas that meet are one. Elements that are no
 * place on the plan, such as chargers, have none of their own.
 */
export function changedAreas(
  before: Site,
  after: Site,
  changed: readonly ChangedElement[],
  margin: number,
): readonly Box[] {
  return apart(
    changed.flatMap(({ list, id, change }) => {
      const points = placeOf(change === 'removed' ? before : after, list, id);
      return points.length === 0 ? [] : [widened(boxOf(points), margin)];
    }),
  );
}

/** Boxes of which no two meet, that cover the same. */
function apart(boxes: readonly Box[]): readonly Box[] {
  const kept: Box[] = [];
  for (let box of boxes) {
    for (let meeting = kept.findIndex((one) => boxesMeet(one, box)); meeting >= 0; ) {
      box = joinedBox(box, kept.splice(meeting, 1)[0]!);
      meeting = kept.findIndex((one) => boxesMeet(one, box));
    }
    kept.push(box);
  }
  return kept;
}

function placeOf(site: Site, list: ElementList, id: string): readonly Point2[] {
  const find = <T extends { readonly id: string }>(elements: readonly T[]): T[] =>
    elements.filter((one) => one.id === id);
  const flat = (path: readonly (readonly number[])[]): Point2[] => path.map(([x = 0, y = 0]) => [x, y]);
  switch (list) {
    case 'stalls':
      return find(site.stalls).flatMap((one) => [...stallRectangle(one)]);
    case 'columns':
      return find(site.columns).flatMap(({ at, size, rotation = 0 }) => [...rectangleAt(at, size, rotation)]);
    case 'members':
      return find(site.members).flatMap(({ from, to }) => flat([from, to]));
    case 'keepouts':
      return find(site.keepouts).flatMap(({ outline }) => flat(outline));
    case 'aisles':
      return find(site.aisles).flatMap(({ outline }) => flat(outline));
    case 'equipment':
      return find(site.equipment).flatMap((one) => [...footprintOf(one)]);
    case 'raceways':
      return find(site.raceways).flatMap(({ path }) => flat(path));
    case 'pullpoints':
      return find(site.pullpoints).flatMap(({ at }) => flat([at]));
    case 'drops':
      return find(site.drops).flatMap(({ box, retractor }) => flat(retractor ? [box, retractor] : [box]));
    default:
      return [];
  }
}
