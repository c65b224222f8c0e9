import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { vehicleOf } from '../../../routing/standing/parked.ts';
import type { Edit } from '../../document/edit.ts';
import type { Element, ListName } from '../../document/element-lists.ts';
import type { MarksByList } from '../scene/differ.ts';
import {
  aisleMark,
  columnMark,
  dropMark,
  equipmentMark,
  keepoutMark,
  memberMark,
  pullpointMark,
  racewayMark,
  stallMark,
} from '../scene/marks.ts';

/** On a site of more stalls, chargers and raceways than this the plan is not made anew at each step of the hand. */
const MOST_LIVE = 1500;

/** A draft on such a site is drawn by itself, and its plan is made when it is set. */
export const isLarge = ({ stalls, chargers, raceways }: Site): boolean =>
  stalls.length + chargers.length + raceways.length > MOST_LIVE;

/** What an edit puts in, as it is drawn, without a plan of it. */
export function draftMarks(edit: Edit, { units }: SiteFile, { vehicles, rules }: Site): MarksByList {
  const lists = new Map<ListName, Element[]>();
  for (const step of edit.steps)
    if (step.kind === 'insert') lists.set(step.list, [...(lists.get(step.list) ?? []), step.element]);
  const fresh = toSite({
    format: 'overrow/site',
    version: 1,
    units,
    name: '',
    ...Object.fromEntries(lists),
  } as SiteFile);
  return {
    stalls: fresh.stalls.map((stall) => stallMark(stall, vehicleOf(stall, { vehicles, rules }), rules.headClearance)),
    columns: fresh.columns.map((column) => columnMark(column)),
    members: fresh.members.map((member) => memberMark(member)),
    keepouts: fresh.keepouts.map((keepout) => keepoutMark(keepout)),
    aisles: fresh.aisles.map((aisle) => aisleMark(aisle)),
    equipment: fresh.equipment.map((equipment) => equipmentMark(equipment)),
    raceways: fresh.raceways.map((raceway) => racewayMark(raceway)),
    pullpoints: fresh.pullpoints.map((pullpoint) => pullpointMark(pullpoint)),
    drops: fresh.drops.map((drop) => dropMark(drop)),
  };
}
