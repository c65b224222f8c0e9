import { CONDUCTOR_SIZES } from '../../../calc/tables/sizes.ts';
import type { Mount } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { ListName, Ref } from '../../document/change/element-lists.ts';
import { type Leaf, leafAt, type SharedValue, valuesAt } from '../../document/change/shared-field.ts';
import { inWords } from '../../document/edits/in-words.ts';
import { setShared } from '../../document/edits/set-shared.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField } from '../../parts/fields.tsx';
import { VARIOUS, VariousField } from '../../parts/maybe-fields.tsx';
import { useMount } from '../elements/drops/use-mount.ts';
import { PANEL_KINDS } from '../elements/kinds.tsx';
import type { SharedWords } from './shared-words.ts';

/**
 * Fields of several elements at once, kind by kind, and of the chargers that hang at selected drops; a field whose
 * values differ says so until it is given one.
 */
export function SharedFields({ selection }: { readonly selection: readonly Ref[] }) {
  const site = useDocument((state) => state.site);
  const idsOf = new Map<ListName, Set<string>>();
  const put = (list: ListName, id: string): void => {
    const ids = idsOf.get(list) ?? new Set();
    idsOf.set(list, ids.add(id));
  };
  for (const { list, id } of selection) put(list, id);
  const drops = idsOf.get('drops');
  for (const { id, drop } of site.chargers) if (drops?.has(drop)) put('chargers', id);
  return [...idsOf].map(([list, ids]) => <FieldsOf key={list} list={list} ids={ids} alone={idsOf.size === 1} />);
}

interface FieldsProps {
  readonly list: ListName;
  readonly ids: ReadonlySet<string>;
  readonly alone: boolean;
}

function FieldsOf({ list, ids, alone }: FieldsProps) {
  const site = useDocument((state) => state.site);
  const all: readonly Site[ListName][number][] = site[list];
  const elements = all.filter(({ id }) => ids.has(id));
  const words = PANEL_KINDS[list].shared as readonly SharedWords[];
  const suited = words.filter(({ suits }) => suits?.(elements) ?? true);
  if (elements.length === 0 || suited.length === 0) return null;
  const name = inWords(elements.map(({ id }) => ({ list, id })));
  return (
    <section className="fields" aria-label={`Fields of ${name}`}>
      {!alone && <h3>{name}</h3>}
      {suited.map((field) => (
        <FieldOf key={field.label} field={field} list={list} elements={elements} />
      ))}
    </section>
  );
}

interface FieldProps {
  readonly field: SharedWords;
  readonly list: ListName;
  readonly elements: readonly Site[ListName][number][];
}

function FieldOf({ field, list, elements }: FieldProps) {
  const document = useDocumentStore();
  const leaf = leafAt(list, field);
  const found = new Set(elements.flatMap((element) => valuesAt(element, field)).map((each) => each ?? field.absent));
  const value = found.size === 1 ? ([...found][0] ?? null) : VARIOUS;
  const mountAs = useMount();
  const set = (next: SharedValue | null): void => {
    // A mount brings the box with it.
    if (list === 'drops' && field.label === 'mount') {
      mountAs(
        elements.map(({ id }) => id),
        (next ?? 'overhead') as Mount,
      );
      return;
    }
    const { file, apply } = document.getState();
    const ids = elements.map(({ id }) => id);
    apply(setShared(file, list, ids, field, next === null || next === field.absent ? undefined : next));
  };
  if (leaf.kind === 'length' || leaf.kind === 'number') {
    const { over, least, most, whole } = leaf;
    return (
      <VariousField
        label={field.label}
        value={value as number | null | typeof VARIOUS}
        none={leaf.optional && field.absent === undefined ? (field.none ?? null) : null}
        unit={leaf.kind === 'length' ? null : (field.unit ?? '')}
        limits={{
          whole,
          ...(over !== undefined && { over }),
          ...(least !== undefined && { least }),
          ...(most !== undefined && { most }),
        }}
        onChange={set}
      />
    );
  }
  return <ChoiceOf field={field} leaf={leaf} value={value} onChange={set} />;
}

interface ChoiceProps {
  readonly field: SharedWords;
  readonly leaf: Leaf;
  readonly value: SharedValue | null;
  readonly onChange: (value: SharedValue | null) => void;
}

const NONE = '';

/** A choice that stands for several elements. */
function ChoiceOf({ field, leaf, value, onChange }: ChoiceProps) {
  const site = useDocument((state) => state.site);
  const options: readonly SharedValue[] = leaf.kind === 'yes or no' ? [true, false] : wordsAmong(site, field, leaf);
  const known = value !== null && value !== VARIOUS && !options.includes(value) ? [value] : [];
  const all = [...known, ...options];
  const shown = value ?? NONE;
  const hasNone = field.none !== undefined;
  return (
    <ChoiceField
      label={field.label}
      value={String(shown)}
      choices={[...(value === VARIOUS ? [VARIOUS] : []), ...(hasNone ? [NONE] : []), ...all.map(String)]}
      words={(each) => {
        if (each === NONE) return field.none ?? '';
        if (each === VARIOUS) return each;
        const plain = leaf.kind === 'yes or no' ? (each === 'true' ? 'yes' : 'no') : each;
        return field.words?.[each] ?? plain;
      }}
      onChange={(each) => {
        if (each === NONE) onChange(null);
        else if (each !== VARIOUS) onChange(all.find((option) => String(option) === each) ?? null);
      }}
    />
  );
}

function wordsAmong(site: Site, { among, words }: SharedWords, { options }: Leaf): readonly (string | number)[] {
  if (among === 'equipment') return site.equipment.map(({ id }) => id);
  if (among === 'vehicles') return [...site.vehicles.keys()];
  if (among === 'conductor sizes') return CONDUCTOR_SIZES;
  // Of two spellings of one thing the file's own word is offered.
  return options.filter((option) => !words || !options.includes(words[option] ?? '') || words[option] === option);
}
