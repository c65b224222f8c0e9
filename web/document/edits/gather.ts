import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { EditStep } from '../change/edit.ts';
import { type Element, elementOf, elementsOf, type ListName, positionsOf, type Ref } from '../change/element-lists.ts';
import { setStep } from '../change/set-field.ts';

/** Elements taken out of a list, ready to be changed. */
export interface Gathered {
  readonly list: ListName;
  readonly element: Element;
}

/** The elements that refs hold, each once, in the file's order; refs to what is not there are left out. */
export function held(file: SiteFile, refs: readonly Ref[]): readonly Gathered[] {
  return ELEMENT_LISTS.flatMap((list) => {
    const ids = new Set(refs.filter((ref) => ref.list === list).map(({ id }) => id));
    if (ids.size === 0) return [];
    const places = positionsOf(elementsOf(file, list));
    return [...ids]
      .filter((id) => places.has(id))
      .sort((a, b) => places.get(a)! - places.get(b)!)
      .map((id) => ({ list, element: elementOf(file, list, id)! }));
  });
}

/** The step from an element to what becomes of it; none where nothing does. */
export function changeStep(list: ListName, before: Element, after: Element): readonly EditStep[] {
  return alike(before, after) ? [] : [{ kind: 'change', list, id: before.id, before, after }];
}

/** The steps that put elements at the end of a list, which they give the file where it has none. */
export function insertSteps(file: SiteFile, list: ListName, elements: readonly Element[]): readonly EditStep[] {
  if (elements.length === 0) return [];
  const start = file[list]?.length ?? 0;
  const inserts = elements.map(
    (element, offset): EditStep => ({ kind: 'insert', list, index: start + offset, element }),
  );
  return file[list] === undefined ? [setStep(file, list, []), ...inserts] : inserts;
}

/** The steps that take elements out of a list, the last first, so that no place moves before it is used. */
export function removeSteps(file: SiteFile, list: ListName, ids: ReadonlySet<string>): readonly EditStep[] {
  const elements = elementsOf(file, list);
  const places = positionsOf(elements);
  return [...ids]
    .flatMap((id) => places.get(id) ?? [])
    .sort((a, b) => b - a)
    .map((index) => ({ kind: 'remove', list, index, element: elements[index]! }));
}

/** Whether two plain values say the same. */
export function alike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && alike(a[name as never], b[name as never]))
  );
}
