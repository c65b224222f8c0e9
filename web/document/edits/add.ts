import type { SiteFile } from '../../../routing/site/site.ts';
import { type Edit, joinEdits } from '../change/edit.ts';
import type { ElementOf, ListName } from '../change/element-lists.ts';
import { elementInFile } from '../change/file-lengths.ts';
import { insertSteps } from './gather.ts';
import { inWords } from './in-words.ts';

/** Adds elements, lengths in site feet, at the end of a list. Their ids are free ones: see `newIds`. */
export function addElements<L extends ListName>(file: SiteFile, list: L, elements: readonly ElementOf<L>[]): Edit {
  const own = elements.map((element) => elementInFile(file, list, element));
  return { name: `Add ${inWords(own.map(({ id }) => ({ list, id })))}`, steps: insertSteps(file, list, own) };
}

/** New elements of several lists, lengths in site feet. */
export type Additions = { readonly [L in ListName]?: readonly ElementOf<L>[] };

/** Adds elements to several lists as one edit: a row with its drops and chargers. */
export function addAll(file: SiteFile, name: string, additions: Additions): Edit {
  const lists = Object.keys(additions) as ListName[];
  return joinEdits(name, ...lists.map((list) => addElements(file, list, additions[list] ?? [])));
}
