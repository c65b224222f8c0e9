import type { SiteFile } from '../../../routing/site/site.ts';
import { type Edit, joinEdits } from '../change/edit.ts';
import type { ElementOf, ListName } from '../change/element-lists.ts';
import { insertSteps } from './gather.ts';
import { inWords } from './in-words.ts';

/** Adds what was proposed to a file, in its own units, at the ends of its lists, as one edit. */
export function addProposed(file: SiteFile, added: { readonly [L in ListName]?: readonly ElementOf<L>[] }): Edit {
  const lists = Object.keys(added) as ListName[];
  const refs = lists.flatMap((list) => (added[list] ?? []).map(({ id }) => ({ list, id })));
  return joinEdits(
    `Draw in ${inWords(refs)}`,
    ...lists.map((list) => ({ name: list, steps: insertSteps(file, list, added[list] ?? []) })),
  );
}
