import type { Kind } from '../kinds/kind.ts';
import { ELEMENT_LISTS, type ElementList, KINDS } from '../kinds/kinds.ts';
import { BUILT_IN_VEHICLES } from '../vehicles.ts';
import { shown } from './expectation.ts';
import { didYouMean, didYouMeanId } from './nearest-word.ts';
import { type Path, placeOf, type TellFault } from './place.ts';

type Fields = Readonly<Record<string, unknown>>;

/** Which field of which list names an element of which other. */
const REFERENCES: readonly { readonly list: ElementList; readonly field: string; readonly to: ElementList }[] =
  ELEMENT_LISTS.flatMap((list) => {
    const { refers = {} }: Pick<Kind<never>, 'refers'> = KINDS[list];
    return Object.entries(refers).map(([field, to]) => ({ list, field, to }));
  });

const MAX_SEARCHED = 300;
const MAX_NAMED = 12;

/**
 * Repeated ids and references to what is not there. Works on a value whose shape may be wrong, so that these errors
 * are told together with those of the shape; a part of the wrong shape is passed over.
 */
export function tellReferenceErrors(value: unknown, tell: TellFault): void {
  if (!isFields(value)) return;
  const { owners, held } = idsOf(value, tell);
  const lookUp = (id: unknown, to: ElementList, path: () => Path): void => {
    // A list that is no list has told its own error.
    if (typeof id !== 'string' || (Object.hasOwn(value, to) && !Array.isArray(value[to]))) return;
    if (held[to].has(id)) return;
    const owner = owners.get(id);
    const due = (): string => `expected the id of ${KINDS[to].anyOne}, got ${shown(id)}`;
    tell(path(), () =>
      owner === undefined
        ? `${due()}, which nothing has${meant(id, to, owners)}`
        : `${due()}, which is ${KINDS[owner.list].anyOne} (${placeOf([owner.list, owner.index])})`,
    );
  };
  for (const { list, field, to } of REFERENCES) {
    eachElement(value, list, (element, index) => {
      const named = own(element, field);
      if (Array.isArray(named))
        for (let i = 0; i < named.length; i++) lookUp(named[i], to, () => [list, index, field, i]);
      else lookUp(named, to, () => [list, index, field]);
    });
  }
  const asBuilt = own(value, 'asBuilt');
  if (isFields(asBuilt)) for (const drop of Object.keys(asBuilt)) lookUp(drop, 'drops', () => ['asBuilt', drop]);
  tellVehicleErrors(value, tell);
}

/** Where an id stands first. */
interface Owner {
  readonly list: ElementList;
  readonly index: number;
}

interface Ids {
  readonly owners: ReadonlyMap<string, Owner>;
  /** Every id of each list, those that stand elsewhere too included: an id repeated is one error, not many. */
  readonly held: Readonly<Record<ElementList, ReadonlySet<string>>>;
}

function idsOf(value: Fields, tell: TellFault): Ids {
  const owners = new Map<string, Owner>();
  const held = Object.fromEntries(ELEMENT_LISTS.map((list) => [list, new Set<string>()])) as Record<
    ElementList,
    Set<string>
  >;
  for (const list of ELEMENT_LISTS) {
    eachElement(value, list, (element, index) => {
      const id = own(element, 'id');
      if (typeof id !== 'string') return;
      held[list].add(id);
      const first = owners.get(id);
      if (first === undefined) owners.set(id, { list, index });
      else
        tell(
          [list, index, 'id'],
          () => `repeated id ${shown(id)}: ${placeOf([first.list, first.index, 'id'])} has it too`,
        );
    });
  }
  return { owners, held };
}

function tellVehicleErrors(value: Fields, tell: TellFault): void {
  const vehicles = own(value, 'vehicles');
  if (vehicles !== undefined && !isFields(vehicles)) return;
  const names = new Set([...BUILT_IN_VEHICLES.keys(), ...(isFields(vehicles) ? Object.keys(vehicles) : [])]);
  const check = (name: unknown, path: Path): void => {
    if (typeof name !== 'string' || names.has(name)) return;
    tell(
      path,
      () => `expected the name of a vehicle class (${some(names)}), got ${shown(name)}${didYouMean(name, names)}`,
    );
  };
  eachElement(value, 'stalls', (stall, index) => check(own(stall, 'vehicle'), ['stalls', index, 'vehicle']));
  const rules = own(value, 'rules');
  if (isFields(rules)) check(own(rules, 'vehicle'), ['rules', 'vehicle']);
}

const some = (names: ReadonlySet<string>): string =>
  `${[...names].slice(0, MAX_NAMED).map(shown).join(', ')}${names.size > MAX_NAMED ? ' and others' : ''}`;

/** Searched only in files small enough to be typed by hand. */
function meant(id: string, to: ElementList, owners: ReadonlyMap<string, Owner>): string {
  if (owners.size > MAX_SEARCHED) return '';
  return didYouMeanId(
    id,
    [...owners].filter(([, owner]) => owner.list === to).map(([name]) => name),
  );
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const own = (of: Fields, name: string): unknown => (Object.hasOwn(of, name) ? of[name] : undefined);

/** Goes through what is an element in a list of a value; a list that is none has nothing in it. */
function eachElement(value: Fields, list: ElementList, look: (element: Fields, index: number) => void): void {
  const items = own(value, list);
  if (!Array.isArray(items)) return;
  items.forEach((element: unknown, index) => {
    if (isFields(element)) look(element, index);
  });
}
