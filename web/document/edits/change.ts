import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from '../change/edit.ts';
import type { Element, ElementOf, ListName, Ref } from '../change/element-lists.ts';
import { elementInFile } from '../change/file-lengths.ts';
import { changeStep, held } from './gather.ts';
import { inWords } from './in-words.ts';

/** New values for fields of an element, lengths in feet; a field that is undefined is taken away. */
export type Patch<L extends ListName = ListName> = L extends ListName
  ? { readonly [K in keyof Omit<ElementOf<L>, 'id'>]?: ElementOf<L>[K] | undefined }
  : never;

/** Changes the same fields of several elements: "Cord of 12 drops". Lengths in the patch are site feet. */
export function changeElements(file: SiteFile, refs: readonly Ref[], patch: Patch): Edit {
  const steps = held(file, refs).flatMap(({ list, element }): readonly EditStep[] =>
    changeStep(list, element, patched(file, list, element, patch)),
  );
  const changed = steps.flatMap((step) => (step.kind === 'change' ? [{ list: step.list, id: step.id }] : []));
  return { name: `Change ${fieldWords(Object.keys(patch))} of ${inWords(changed)}`, steps };
}

function patched(file: SiteFile, list: ListName, element: Element, patch: Patch): Element {
  const given = Object.entries(patch).filter(([name]) => name !== 'id');
  const values = elementInFile(file, list, Object.fromEntries(given.filter(([, value]) => value !== undefined)));
  const removed = new Set(given.filter(([, value]) => value === undefined).map(([name]) => name));
  const kept = Object.entries({ ...element, ...values }).filter(([name]) => !removed.has(name));
  return Object.fromEntries(kept) as unknown as Element;
}

function fieldWords(names: readonly string[]): string {
  const words = names.map((name) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  return words.length > 2 ? `${words.length} fields` : words.join(' and ');
}
