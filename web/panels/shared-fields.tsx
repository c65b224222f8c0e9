import type { ReactNode } from 'react';
import type { Site } from '../../routing/site/site.ts';
import { METHODS, MOUNTS, PARKING_WAYS, PLACES, STALL_USES } from '../../routing/site/vocabulary.ts';
import type { Patch } from '../document/edits/change.ts';
import type { ListName, Ref } from '../document/element-lists.ts';
import { useDocument } from '../document/use-document.ts';
import { ChoiceField } from './fields.tsx';
import { MaybeLength, MaybeNumber } from './maybe-fields.tsx';

interface SharedProps {
  readonly selection: readonly Ref[];
  readonly onChange: (patch: Patch) => void;
}

/** Fields of several elements of one kind at once; a field whose values differ says so until it is given one. */
export function SharedFields({ selection, onChange }: SharedProps) {
  const site = useDocument((state) => state.site);
  const [first] = selection;
  if (!first || selection.some(({ list }) => list !== first.list)) return null;
  const Fields = FIELDS[first.list] as ((props: FieldsProps<ListName>) => ReactNode) | undefined;
  if (!Fields) return null;
  const ids = new Set(selection.map(({ id }) => id));
  const all: readonly Site[ListName][number][] = site[first.list];
  const elements = all.filter(({ id }) => ids.has(id));
  return (
    <section className="fields" aria-label="Fields of all of them">
      <Fields site={site} elements={elements} onChange={onChange} />
    </section>
  );
}

interface FieldsProps<L extends ListName> {
  readonly site: Site;
  readonly elements: readonly Site[L][number][];
  readonly onChange: (patch: Patch) => void;
}

/** The value that all share; null where they differ. */
function shared<T, V>(elements: readonly T[], read: (element: T) => V): V | null {
  const values = new Set(elements.map(read));
  return values.size === 1 ? [...values][0]! : null;
}

const VARIOUS = 'various';

interface ChoicesProps<T extends string> {
  readonly label: string;
  readonly value: T | null;
  readonly choices: readonly T[];
  readonly onChange: (value: T) => void;
}

/** A choice that stands for several elements. */
function SharedChoice<T extends string>({ label, value, choices, onChange }: ChoicesProps<T>) {
  return (
    <ChoiceField<T | ''>
      label={label}
      value={value ?? ''}
      choices={value === null ? ['', ...choices] : choices}
      words={(each) => each || VARIOUS}
      onChange={(each) => {
        if (each !== '') onChange(each);
      }}
    />
  );
}

interface LengthProps {
  readonly label: string;
  readonly value: number | null;
  readonly least?: number;
  readonly onChange: (value: number) => void;
}

const SharedLength = ({ label, value, least = 0.1, onChange }: LengthProps) => (
  <MaybeLength
    label={label}
    none={VARIOUS}
    least={least}
    value={value}
    onChange={(next) => next !== null && onChange(next)}
  />
);

function StallFields({ site, elements, onChange }: FieldsProps<'stalls'>) {
  return (
    <>
      <SharedLength
        label="width"
        value={shared(elements, ({ width }) => width)}
        onChange={(width) => onChange({ width })}
      />
      <SharedLength
        label="depth"
        value={shared(elements, ({ depth }) => depth)}
        onChange={(depth) => onChange({ depth })}
      />
      <SharedChoice
        label="use"
        value={shared(elements, ({ use }) => use ?? 'standard')}
        choices={STALL_USES}
        onChange={(use) => onChange({ use: use === 'standard' ? undefined : use })}
      />
      <SharedChoice
        label="parking"
        value={shared(elements, ({ parking }) => parking ?? 'either')}
        choices={PARKING_WAYS}
        onChange={(parking) => onChange({ parking: parking === 'either' ? undefined : parking })}
      />
      <SharedChoice
        label="vehicle"
        value={shared(elements, ({ vehicle }) => vehicle ?? site.rules.vehicle)}
        choices={[...site.vehicles.keys()]}
        onChange={(vehicle) => onChange({ vehicle })}
      />
    </>
  );
}

function DropFields({ elements, onChange }: FieldsProps<'drops'>) {
  return (
    <>
      <SharedLength
        label="cord of each"
        value={shared(elements, ({ cord }) => cord)}
        onChange={(cord) => onChange({ cord })}
      />
      <SharedLength
        label="connectors rest at"
        least={0}
        value={shared(elements, ({ restHeight }) => restHeight ?? null)}
        onChange={(restHeight) => onChange({ restHeight })}
      />
      <SharedChoice
        label="mount"
        value={shared(elements, ({ mount }) => mount ?? 'overhead')}
        choices={MOUNTS}
        onChange={(mount) => onChange({ mount: mount === 'overhead' ? undefined : mount })}
      />
    </>
  );
}

function RacewayFields({ elements, onChange }: FieldsProps<'raceways'>) {
  return (
    <>
      <SharedChoice
        label="method"
        value={shared(elements, ({ method }) => method)}
        choices={METHODS}
        onChange={(method) => onChange({ method })}
      />
      <SharedChoice
        label="place"
        value={shared(elements, ({ place }) => place)}
        choices={PLACES}
        onChange={(place) => onChange({ place })}
      />
    </>
  );
}

const ColumnFields = ({ elements, onChange }: FieldsProps<'columns'>) => (
  <SharedLength
    label="height"
    value={shared(elements, ({ height }) => height ?? null)}
    onChange={(height) => onChange({ height })}
  />
);

function ChargerFields({ site, elements, onChange }: FieldsProps<'chargers'>) {
  return (
    <>
      <SharedChoice
        label="fed from"
        value={shared(elements, ({ from }) => from)}
        choices={site.equipment.map(({ id }) => id)}
        onChange={(from) => onChange({ from })}
      />
      <MaybeNumber
        label="rated"
        unit="A"
        none={VARIOUS}
        value={shared(elements, ({ amps }) => amps)}
        onChange={(amps) => amps !== null && onChange({ amps })}
      />
      <MaybeNumber
        label="voltage"
        unit="V"
        none={VARIOUS}
        value={shared(elements, ({ volts }) => volts)}
        onChange={(volts) => volts !== null && onChange({ volts })}
      />
    </>
  );
}

const FIELDS: { readonly [L in ListName]?: (props: FieldsProps<L>) => ReactNode } = {
  stalls: StallFields,
  drops: DropFields,
  raceways: RacewayFields,
  columns: ColumnFields,
  chargers: ChargerFields,
};
