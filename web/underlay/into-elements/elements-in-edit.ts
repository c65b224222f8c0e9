import type { GroundElements } from '../../../routing/site/import/geojson-elements.ts';
import { PLACED_LISTS, type PlacedList } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit } from '../../document/change/edit.ts';
import { listOf } from '../../document/change/element-lists.ts';
import { type Additions, addAll } from '../../document/edits/add.ts';
import { inWords } from '../../document/edits/in-words.ts';

export interface BringInEdit {
  readonly edit: Edit;
  /** How many it adds, and how many are left out because the site has their ids. */
  readonly adds: number;
  readonly here: number;
}

/** Adds the elements that a GeoJSON holds and that the site has not, under the ids they have there. */
export function elementsIn(file: SiteFile, elements: GroundElements): BringInEdit {
  const fresh = PLACED_LISTS.map((list): readonly [PlacedList, readonly { readonly id: string }[]] => [
    list,
    elements[list].filter(({ id }) => listOf(file, id) === undefined),
  ]).filter(([, own]) => own.length > 0);
  const refs = fresh.flatMap(([list, own]) => own.map(({ id }) => ({ list, id })));
  const all = PLACED_LISTS.reduce((sum, list) => sum + elements[list].length, 0);
  const edit = addAll(file, `Bring in ${inWords(refs)}`, Object.fromEntries(fresh) as Additions);
  return { edit, adds: refs.length, here: all - refs.length };
}
