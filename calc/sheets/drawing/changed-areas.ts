import { type Box, boxesMeet, boxOf, joinedBox, widened } from '../../../routing/plane/box.ts';
import { type ElementList, placedKind } from '../../../routing/site/kinds/kinds.ts';
import { byId } from '../../../routing/site/look-up.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { ChangedElement } from '../../plan/compared/revision.ts';

/**
 * The areas of the plan that a revision changed: round every element that it added, moved or changed, and round the place
 * of what it removed (from the version before), and round other spots that read otherwise, with so many feet to spare.
 * Areas that meet are one. A charger stands at its drop; feeders and loads are no place on the plan.
 */
export function changedAreas(
  before: Site,
  after: Site,
  changed: readonly Changed[],
  margin: number,
  spots: readonly Point2[] = [],
): readonly Box[] {
  return apart([
    ...changed.flatMap((one) => boxRound(before, after, one, margin) ?? []),
    ...spots.map((spot) => widened(boxOf([spot]), margin)),
  ]);
}

type Changed = Omit<ChangedElement, 'lines'>;

/** The box round one changed element; null where it is no place on the plan. */
function boxRound(before: Site, after: Site, { list, id, change }: Changed, margin: number): Box | null {
  const points = placeOf(change === 'removed' ? before : after, list, id);
  return points.length === 0 ? null : widened(boxOf(points), margin);
}

/** Numbers of the lines of the change order that the elements in an area have a part in. */
export function linesIn(area: Box, before: Site, after: Site, changed: readonly ChangedElement[]): readonly number[] {
  const inside = changed.filter((one) => {
    const box = boxRound(before, after, one, 0);
    return box !== null && boxesMeet(box, area);
  });
  return [...new Set(inside.flatMap(({ lines }) => lines))].sort((a, b) => a - b);
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
  if (list === 'chargers') {
    const drop = byId(site.chargers).get(id)?.drop;
    return drop === undefined ? [] : placeOf(site, 'drops', drop);
  }
  const element = byId<{ readonly id: string }>(site[list]).get(id);
  const kind = placedKind(list);
  return element && kind && !kind.unclouded ? kind.points(element as never) : [];
}
