import { ELEMENT_LISTS, placedKind } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from '../change/edit.ts';
import { type Element, elementsOf, type ListName, type Ref } from '../change/element-lists.ts';
import { setStep } from '../change/set-field.ts';
import { changeStep, held, removeSteps } from './gather.ts';
import { inWords } from './in-words.ts';
import { deletedSteps } from './records/marks-steps.ts';

/**
 * Deletes what refs hold and what cannot stand without it: with a drop its chargers and what was measured there, with
 * equipment its feeders, loads and chargers. A stall is taken from the chargers that serve it. Of a handle: a vertex
 * leaves its raceway, which goes when fewer than two are left; a retractor leaves its drop; a box takes its drop along.
 */
export function deleteElements(file: SiteFile, refs: readonly Ref[]): Edit {
  const gone = chosen(file, refs);
  const asked = ELEMENT_LISTS.flatMap((list) => [...gone[list]].map((id) => ({ list, id })));
  takeDependents(file, gone);
  const all = ELEMENT_LISTS.flatMap((list) => [...gone[list]].map((id) => ({ list, id })));
  const named = new Set(asked.map(({ id }) => id));
  const also = all.filter(({ id }) => !named.has(id));
  const handles = handleSteps(file, refs, gone);

  const steps: EditStep[] = [...handles, ...chargersWithoutStalls(file, gone), ...asBuiltStep(file, gone.drops)];
  for (const list of ELEMENT_LISTS) steps.push(...removeSteps(file, list, gone[list]));
  steps.push(
    ...deletedSteps(
      file,
      all.map(({ id }) => id),
    ),
  );
  if (asked.length === 0) return { name: `Delete ${handleWords(handles.length, refs)}`, steps };
  return { name: `Delete ${inWords(asked)}${also.length > 0 ? ` with ${inWords(also)}` : ''}`, steps };
}

type Gone = Record<ListName, Set<string>>;

function chosen(file: SiteFile, refs: readonly Ref[]): Gone {
  const gone = Object.fromEntries(ELEMENT_LISTS.map((list) => [list, new Set<string>()])) as Gone;
  const whole = refs.filter(({ part }) => part === undefined);
  for (const { list, element } of held(file, whole)) gone[list].add(element.id);
  for (const { list, element } of held(file, refs)) if (!leftOf(list, element, refs)) gone[list].add(element.id);
  return gone;
}

/** An element without those of its handles that refs hold; null where it goes with them. */
function leftOf(list: ListName, element: Element, refs: readonly Ref[]): Element | null {
  const parts = refs.flatMap((ref) => (ref.list === list && ref.id === element.id && ref.part ? [ref.part] : []));
  const kind = placedKind(list);
  return parts.length > 0 && kind?.parts ? kind.parts.without(element as never, parts) : element;
}

function takeDependents(file: SiteFile, gone: Gone): void {
  const { equipment } = gone;
  for (const { id, from, to } of elementsOf(file, 'feeders')) {
    if (equipment.has(from) || equipment.has(to)) gone.feeders.add(id);
  }
  for (const { id, from } of elementsOf(file, 'loads')) if (equipment.has(from)) gone.loads.add(id);
  for (const { id, from, drop } of elementsOf(file, 'chargers')) {
    if (equipment.has(from) || gone.drops.has(drop)) gone.chargers.add(id);
  }
}

function chargersWithoutStalls(file: SiteFile, gone: Gone): readonly EditStep[] {
  if (gone.stalls.size === 0) return [];
  return elementsOf(file, 'chargers')
    .filter(({ id, stalls }) => !gone.chargers.has(id) && stalls.some((stall) => gone.stalls.has(stall)))
    .flatMap((charger) => {
      const stalls = charger.stalls.filter((stall) => !gone.stalls.has(stall));
      return changeStep('chargers', charger, { ...charger, stalls });
    });
}

function asBuiltStep(file: SiteFile, drops: ReadonlySet<string>): readonly EditStep[] {
  const measured = Object.entries(file.asBuilt ?? {});
  const left = measured.filter(([drop]) => !drops.has(drop));
  return left.length === measured.length ? [] : [setStep(file, 'asBuilt', Object.fromEntries(left))];
}

function handleSteps(file: SiteFile, refs: readonly Ref[], gone: Gone): readonly EditStep[] {
  return held(file, refs).flatMap(({ list, element }) =>
    gone[list].has(element.id) ? [] : changeStep(list, element, leftOf(list, element, refs) ?? element),
  );
}

function handleWords(count: number, refs: readonly Ref[]): string {
  const ids = [...new Set(refs.map(({ id }) => id))];
  const kind = refs[0]?.part?.kind ?? 'handle';
  const word = refs.length === 1 ? kind : kind === 'vertex' ? 'vertices' : `${kind}s`;
  return count === 1 && ids.length === 1 ? `${word} of ${ids[0]}` : `${refs.length} ${word}`;
}
