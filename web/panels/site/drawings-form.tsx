import { PURPOSE_PARTS, PURPOSE_WORDS, partsOf, USUAL_PARTS } from '../../../calc/sheets/pdf/kit/purpose.ts';
import { SHEET_PART_WORDS } from '../../../routing/site/schema/sheet-part-words.ts';
import { SET_PURPOSES, SHEET_PARTS, type SheetPart } from '../../../routing/site/schema/vocabulary.ts';
import type { Drawings } from '../../../routing/site/site.ts';
import { fieldInFile } from '../../document/change/file-lengths.ts';
import { setField } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, PlaceFields, TextField } from '../../parts/fields.tsx';
import { MaybeNumber } from '../../parts/maybe-fields.tsx';
import { ChecksField } from '../elements/checks-field.tsx';

const ANY = 'no purpose yet: everything';

/** What the drawing set is for, what is in it, and what it says besides. Kept with the site. */
export function DrawingsForm() {
  return (
    <FieldGroup name="Drawing set" heading="Drawing set">
      <DrawingsFields />
    </FieldGroup>
  );
}

export function DrawingsFields() {
  const document = useDocumentStore();
  const drawings = useDocument((state) => state.site.drawings);
  const put = (patch: { readonly [K in keyof Drawings]?: Drawings[K] | undefined }): void => {
    const { file, apply } = document.getState();
    const given = Object.entries({ ...drawings, ...patch }).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    );
    const after = given.length > 0 ? fieldInFile(file, 'drawings', Object.fromEntries(given) as Drawings) : undefined;
    apply(setField(file, 'Change the drawing set', 'drawings', after));
  };
  const { purpose, areas = [] } = drawings;
  const setParts = (sheets: readonly SheetPart[]): void => {
    const usual =
      purpose === undefined ? USUAL_PARTS : SHEET_PARTS.filter((part) => PURPOSE_PARTS[purpose].includes(part));
    const isUsual = sheets.length === usual.length && usual.every((part) => sheets.includes(part));
    put({ sheets: isUsual ? undefined : [...sheets] });
  };
  const parts = partsOf(drawings);
  return (
    <>
      <ChoiceField
        label="set for"
        value={purpose ?? ANY}
        choices={[ANY, ...SET_PURPOSES]}
        words={(choice) => (choice === ANY ? choice : PURPOSE_WORDS[choice as keyof typeof PURPOSE_WORDS].title)}
        onChange={(choice) => put({ purpose: SET_PURPOSES.find((one) => one === choice), sheets: undefined })}
      />
      <ChecksField
        label="sheets beside the cover"
        choices={SHEET_PARTS}
        value={SHEET_PARTS.filter((part) => parts.has(part))}
        words={(part) => SHEET_PART_WORDS[part]}
        onChange={setParts}
      />
      <MaybeNumber
        label="plans in full at 1 to"
        unit=""
        none=""
        least={1}
        most={10000}
        value={drawings.scale ?? null}
        onChange={(scale) => put({ scale: scale ?? undefined })}
      />
      <p className="quiet">96 is 1/8" = 1'-0"; left empty, each lot finds its own</p>
      {areas.map((area, i) => (
        <fieldset key={`${i} of ${areas.length}`} className="fields issue" aria-label={`Area ${i + 1}`}>
          <h4>Area {i + 1}</h4>
          <TextField
            label="area name"
            value={area.name}
            check={(text) => (text === '' ? 'fill this in' : text.length > 80 ? '80 letters or fewer' : null)}
            onChange={(name) => put({ areas: areas.map((one, at) => (at === i ? { ...one, name } : one)) })}
          />
          {(['from', 'to'] as const).map((corner) => (
            <PlaceFields
              key={corner}
              label={corner === 'from' ? 'one corner' : 'the opposite corner'}
              value={area[corner]}
              onChange={(at) => put({ areas: areas.map((one, k) => (k === i ? { ...one, [corner]: at } : one)) })}
            />
          ))}
          <button type="button" className="plain" onClick={() => put({ areas: areas.filter((_, at) => at !== i) })}>
            Take this area away
          </button>
        </fieldset>
      ))}
      {areas.length < 40 && (
        <button
          type="button"
          className="plain"
          onClick={() =>
            put({ areas: [...areas, { name: `Area ${areas.length + 1}`, ...boxRound(document.getState().site) }] })
          }
        >
          Add an area to be enlarged
        </button>
      )}
      <Lines
        label="scope of work"
        add="Add a line to the scope"
        value={drawings.scope ?? []}
        onChange={(scope) => put({ scope })}
      />
      <Lines
        label="general note"
        add="Add a general note"
        value={drawings.notes ?? []}
        onChange={(notes) => put({ notes })}
      />
    </>
  );
}

interface LinesProps {
  readonly label: string;
  readonly add: string;
  readonly value: readonly string[];
  readonly onChange: (value: string[]) => void;
}

/** Lines of text, each in a field of its own; one that is emptied goes. */
function Lines({ label, add, value, onChange }: LinesProps) {
  return (
    <>
      {value.map((line, i) => (
        <TextField
          key={`${i} of ${value.length}`}
          label={label}
          long
          value={line}
          check={(text) => (text.length > 200 ? '200 letters or fewer' : null)}
          onChange={(text) => onChange(value.flatMap((one, at) => (at !== i ? [one] : text === '' ? [] : [text])))}
        />
      ))}
      {value.length < 40 && (
        <button type="button" className="plain" onClick={() => onChange([...value, `New ${label}`])}>
          {add}
        </button>
      )}
    </>
  );
}

interface Corners {
  readonly from: [number, number];
  readonly to: [number, number];
}

/** A first area: all drops of the site. */
function boxRound({
  drops,
}: {
  readonly drops: readonly { readonly box: readonly [number, number, number] }[];
}): Corners {
  const xs = drops.map(({ box }) => box[0]);
  const ys = drops.map(({ box }) => box[1]);
  if (drops.length === 0) return EMPTY;
  return {
    from: [Math.min(...xs) - 20, Math.min(...ys) - 20],
    to: [Math.max(...xs) + 20, Math.max(...ys) + 20],
  };
}

const EMPTY: Corners = { from: [0, 0], to: [60, 40] };
