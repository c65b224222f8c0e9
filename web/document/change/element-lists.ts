import { indexById } from '../../../routing/site/ids.ts';
import type { Part } from '../../../routing/site/kinds/kind.ts';
import { ELEMENT_LISTS, type ElementList } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

export type ListName = ElementList;

/** One element of a list, as it stands in the file. */
export type ElementOf<L extends ListName> = NonNullable<SiteFile[L]>[number];
export type Element = ElementOf<ListName>;

/** What the hand can hold: an element, or one handle of it. */
export interface Ref {
  readonly list: ListName;
  readonly id: string;
  readonly part?: Part;
}

/** The elements of a list; empty where the file has no such list. */
export function elementsOf<L extends ListName>(file: SiteFile, list: L): readonly ElementOf<L>[] {
  return (file[list] ?? []) as readonly ElementOf<L>[];
}

/** Whether two refs hold the same thing, parts included. */
export const sameRef = (a: Ref, b: Ref): boolean =>
  a.list === b.list && a.id === b.id && JSON.stringify(a.part ?? null) === JSON.stringify(b.part ?? null);

interface Named {
  readonly id: string;
}
const positions = new WeakMap<readonly Named[], ReadonlyMap<string, number>>();

/** Where each id of a list stands. Kept with the list, so that a list that did not change is indexed once. */
export function positionsOf(elements: readonly Named[]): ReadonlyMap<string, number> {
  let found = positions.get(elements);
  if (!found) {
    found = indexById(elements);
    positions.set(elements, found);
  }
  return found;
}

/** Tells `positionsOf` that a list holds the same ids in the same places as another that it has indexed. */
export function samePositions(elements: readonly Named[], as: readonly Named[]): void {
  const known = positions.get(as);
  if (known) positions.set(elements, known);
}

/** The element a list holds under an id, or undefined. */
export function elementOf<L extends ListName>(file: SiteFile, list: L, id: string): ElementOf<L> | undefined {
  const elements = elementsOf(file, list);
  const index = positionsOf(elements).get(id);
  return index === undefined ? undefined : elements[index];
}

/** The list that holds an id; ids are unique in the file. Undefined where none does. */
export function listOf(file: SiteFile, id: string): ListName | undefined {
  return ELEMENT_LISTS.find((list) => positionsOf(elementsOf(file, list)).has(id));
}
