import type { Site } from '../../../routing/site/site.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import { changeElements, type Patch } from '../../document/edits/change.ts';
import { findById } from '../../document/find/find-by.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';

const find = findById<{ readonly id: string }>();

/** An element of the site in feet, by its id; undefined where it has gone. */
export function useElement<L extends ListName>(list: L, id: string): Site[L][number] | undefined {
  return useDocument((state) => {
    const elements: readonly Site[L][number][] = state.site[list];
    return find(elements, id) as Site[L][number] | undefined;
  });
}

/** Changes fields of an element, lengths in feet, as one edit. */
export function useChange<L extends ListName>(list: L, id: string): (patch: Patch<L>) => void {
  const document = useDocumentStore();
  return (patch) => {
    const { file, apply } = document.getState();
    apply(changeElements(file, [{ list, id }], patch as Patch));
  };
}
