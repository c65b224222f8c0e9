import * as v from 'valibot';
import { id as idSchema, MAX_ID_LENGTH } from '../../../routing/site/schema/schema-parts.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, EditStep } from '../change/edit.ts';
import { type Element, elementsOf, type ListName, listOf, type Ref } from '../change/element-lists.ts';
import { setStep } from '../change/set-field.ts';
import { changeStep, held } from './gather.ts';
import { inWords } from './in-words.ts';
import { type Numbering, numberAt } from './numbering.ts';
import { renamedSteps } from './records/marks-steps.ts';

export type Renamed = { readonly ok: true; readonly edit: Edit } | { readonly ok: false; readonly says: string };

const MISFIT = `A name has 1 to ${MAX_ID_LENGTH} signs and no control characters.`;

/** Gives an element another id, everywhere it is spoken of. Refused where the id is taken, empty or too long. */
export function rename(file: SiteFile, id: string, to: string): Renamed {
  const list = listOf(file, id);
  if (!list) return { ok: false, says: `There is no ${id} on this site.` };
  if (!v.is(idSchema, to)) return { ok: false, says: MISFIT };
  const taken = to === id ? undefined : listOf(file, to);
  if (taken) return { ok: false, says: `${to} is taken: ${inWords([{ list: taken, id: to }])} has that name.` };
  return { ok: true, edit: { name: `Rename ${id} to ${to}`, steps: renameSteps(file, new Map([[id, to]])) } };
}

/**
 * Numbers elements afresh in the order given: their names become those of the numbering, everywhere they are spoken of.
 * Refused where one of the names is held by an element that is not renumbered with them.
 */
export function renumber(file: SiteFile, refs: readonly Ref[], numbering: Numbering): Renamed {
  const ids = [...new Set(refs.map(({ id }) => id))];
  const names = new Map(ids.map((id, index) => [id, numberAt(numbering, index)]));
  for (const to of names.values()) {
    const holder = names.has(to) ? undefined : listOf(file, to);
    if (holder) return { ok: false, says: `${to} is taken: ${inWords([{ list: holder, id: to }])} has that name.` };
    if (!v.is(idSchema, to)) return { ok: false, says: MISFIT };
  }
  const steps = renameSteps(file, names);
  return { ok: true, edit: { name: `Renumber ${inWords(held(file, refs).map(named))}`, steps } };
}

/** Numbers stalls afresh on the board, in the order given: their labels become those of the numbering, their names stay. */
export function relabel(file: SiteFile, stalls: readonly string[], numbering: Numbering): Edit {
  const labels = new Map([...new Set(stalls)].map((id, index) => [id, numberAt(numbering, index)]));
  const refs = stalls.map((id) => ({ list: 'stalls', id }) as const);
  const steps = elementsOf(file, 'stalls').flatMap((stall) => {
    const label = labels.get(stall.id);
    return label === undefined ? [] : changeStep('stalls', stall, { ...stall, label });
  });
  return { name: `Renumber ${inWords(held(file, refs).map(named))}`, steps };
}

const named = ({ list, element }: { list: ListName; element: Element }): Pick<Ref, 'list' | 'id'> => ({
  list,
  id: element.id,
});

function renameSteps(file: SiteFile, names: ReadonlyMap<string, string>): readonly EditStep[] {
  const now = (id: string): string => names.get(id) ?? id;
  const all = <L extends ListName>(list: L): readonly EditStep[] =>
    elementsOf(file, list).flatMap((element) => changeStep(list, element, respoken(element, now)));
  const lists = [
    ...new Set([...names.keys()].flatMap((id) => listOf(file, id) ?? [])),
    ...(['feeders', 'loads', 'chargers'] as const),
  ];
  const measured = Object.entries(file.asBuilt ?? {});
  const issued = Object.entries(file.issued?.circuits ?? {});
  const onWays = Object.keys({ ...file.issued?.conduits, ...file.issued?.boxes });
  return [
    ...[...new Set(lists)].flatMap((list) => all(list)),
    ...(measured.some(([drop]) => names.has(drop))
      ? [setStep(file, 'asBuilt', Object.fromEntries(measured.map(([drop, found]) => [now(drop), found])))]
      : []),
    ...(issued.some(([id, { panel }]) => names.has(id) || names.has(panel)) ||
    onWays.some((key) => names.has(chargerOf(key)))
      ? [setStep(file, 'issued', respokenIssued(file.issued!, now))]
      : []),
    ...renamedSteps(file, names),
  ];
}

type IssuedNumbers = NonNullable<SiteFile['issued']>;

const chargerOf = (key: string): string => key.slice(0, key.lastIndexOf('/'));

const respokenIssued = (
  { circuits, conduits, boxes, ...rest }: IssuedNumbers,
  now: (id: string) => string,
): IssuedNumbers => ({
  ...rest,
  ...(circuits === undefined ? {} : { circuits: respokenCircuits(Object.entries(circuits), now) }),
  ...(conduits === undefined ? {} : { conduits: respokenKeys(conduits, now) }),
  ...(boxes === undefined ? {} : { boxes: respokenKeys(boxes, now) }),
});

/** Names by a charger and a place on its way. */
const respokenKeys = (
  names: Readonly<Record<string, string>>,
  now: (id: string) => string,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(names).map(([key, name]) => [`${now(chargerOf(key))}${key.slice(key.lastIndexOf('/'))}`, name]),
  );

type IssuedCircuits = NonNullable<NonNullable<SiteFile['issued']>['circuits']>;

const respokenCircuits = (
  issued: readonly (readonly [string, IssuedCircuits[string]])[],
  now: (id: string) => string,
): IssuedCircuits =>
  Object.fromEntries(issued.map(([id, circuit]) => [now(id), { ...circuit, panel: now(circuit.panel) }]));

/** An element with every id in it, its own and those it refers to, as they are now. */
function respoken(element: Element, now: (id: string) => string): Element {
  const id = now(element.id);
  if ('drop' in element) {
    return { ...element, id, drop: now(element.drop), from: now(element.from), stalls: element.stalls.map(now) };
  }
  if ('conductor' in element) return { ...element, id, from: now(element.from), to: now(element.to) };
  if ('va' in element) return { ...element, id, from: now(element.from) };
  return { ...element, id };
}
