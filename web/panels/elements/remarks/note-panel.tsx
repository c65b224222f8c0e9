import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, PlaceFields, TextField } from '../../../parts/fields.tsx';
import { useOptions } from '../../draw/use-options.ts';
import { useChange, useElement } from '../use-element.ts';

/** So far off its text a note begins to point, feet. */
const AWAY = 6;

const filled = (text: string): string | null => (text === '' ? 'A note has some text.' : null);

/** A note: its text, where it stands, and what it points at. */
export function NotePanel({ id }: { readonly id: string }) {
  const note = useElement('notes', id);
  const change = useChange('notes', id);
  if (!note) return null;
  const { at, text, to } = note;
  return (
    <FieldGroup name="Note">
      <TextField label="text" long value={text} check={filled} onChange={(next) => change({ text: next })} />
      <PlaceFields label="place" value={at} onChange={(next) => change({ at: next })} />
      {to && <PlaceFields label="points at" value={to} onChange={(next) => change({ to: next })} />}
      <p className="row-acts">
        <button
          type="button"
          className="plain"
          onClick={() => change({ to: to ? undefined : [at[0] - AWAY, at[1] - AWAY] })}
        >
          {to ? 'Point at nothing' : 'Point at something'}
        </button>
      </p>
    </FieldGroup>
  );
}

/** The note that is drawn next. */
export function NoteForm() {
  const [{ text, points }, change] = useOptions('note');
  return (
    <FieldGroup name="Note" label="Note to draw">
      <TextField label="text" long value={text} check={filled} onChange={(next) => change({ text: next })} />
      <ChoiceField
        label="points at something"
        value={points ? 'yes' : 'no'}
        choices={['yes', 'no']}
        onChange={(next) => change({ points: next === 'yes' })}
      />
    </FieldGroup>
  );
}
