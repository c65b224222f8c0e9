import { addTo } from '../../../routing/lists/grouping.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { Edit } from '../../document/change/edit.ts';
import type { Element, ListName } from '../../document/change/element-lists.ts';
import { boardKind, MARKED_LISTS } from '../kinds/kinds.ts';
import type { MarksByList } from '../scene/differ.ts';

/** On a site of more stalls, chargers and raceways than this the plan is not made anew at each step of the hand. */
const MOST_LIVE = 1500;

/** A draft on such a site is drawn by itself, and its plan is made when it is set. */
export const isLarge = ({ stalls, chargers, raceways }: Site): boolean =>
  stalls.length + chargers.length + raceways.length > MOST_LIVE;

/** What an edit puts in, as it is drawn, without a plan of it. */
export function draftMarks(edit: Edit, { units }: SiteFile, { vehicles, rules }: Site): MarksByList {
  const lists = new Map<ListName, Element[]>();
  for (const step of edit.steps) if (step.kind === 'insert') addTo(lists, step.list, step.element);
  const fresh = toSite({
    format: 'overrow/site',
    version: 1,
    units,
    name: '',
    ...Object.fromEntries(lists),
  } as SiteFile);
  const ground: Site = { ...fresh, vehicles, rules };
  return Object.fromEntries(
    MARKED_LISTS.map((list) => [list, ground[list].flatMap((element) => boardKind(list).mark(element, ground) ?? [])]),
  ) as MarksByList;
}
