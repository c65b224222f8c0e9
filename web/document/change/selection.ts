import { samePart } from '../../../routing/site/kinds/kind.ts';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit } from './edit.ts';
import { elementOf, type Ref, sameRef } from './element-lists.ts';

export const SELECT_MODES = ['replace', 'add', 'toggle', 'remove'] as const;
export type SelectMode = (typeof SELECT_MODES)[number];

const keyOf = ({ list, id, part }: Ref): string => JSON.stringify([list, id, part ?? null]);

/** The selection after choosing refs on top of one. No ref stands in it twice. */
export function selected(selection: readonly Ref[], refs: readonly Ref[], mode: SelectMode): readonly Ref[] {
  const kept = new Map(mode === 'replace' ? [] : selection.map((ref) => [keyOf(ref), ref] as const));
  for (const ref of refs) {
    const key = keyOf(ref);
    if (mode === 'remove' || (mode === 'toggle' && kept.has(key))) kept.delete(key);
    else if (!kept.has(key)) kept.set(key, ref);
  }
  const next = [...kept.values()];
  const same = next.length === selection.length && next.every((ref, index) => sameRef(ref, selection[index]!));
  return same ? selection : next;
}

/** The refs whose element, and handle, is still there. */
export function stillThere(file: SiteFile, refs: readonly Ref[]): readonly Ref[] {
  const kept = refs.filter((ref) => holds(file, ref));
  return kept.length === refs.length ? refs : kept;
}

function holds(file: SiteFile, { list, id, part }: Ref): boolean {
  const element = elementOf(file, list, id);
  if (!element) return false;
  if (!part) return true;
  const parts = placedKind(list)?.parts?.of(element as never) ?? [];
  return parts.some((one) => samePart(one.part, part));
}

/** The elements that an edit puts in: what to select after a paste or a copy. */
export const insertedBy = (edit: Edit): readonly Ref[] =>
  edit.steps.flatMap((step) => (step.kind === 'insert' ? [{ list: step.list, id: step.element.id }] : []));

/** The elements that an edit puts in or changes, each once: where its effect is seen. */
export function touchedBy(edit: Edit): readonly Ref[] {
  const refs = edit.steps.flatMap((step): Ref[] =>
    step.kind === 'insert'
      ? [{ list: step.list, id: step.element.id }]
      : step.kind === 'change'
        ? [{ list: step.list, id: step.after.id }]
        : [],
  );
  return selected([], refs, 'replace');
}
