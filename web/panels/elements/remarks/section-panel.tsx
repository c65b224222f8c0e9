import { MOST_SECTION_NAME } from '../../../../routing/site/kinds/sections.ts';
import { whenAsked } from '../../../page-state/when-asked.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { LengthField, PlaceFields, TextField } from '../../../parts/fields.tsx';
import { useOptions } from '../../draw/use-options.ts';
import { useChange, useElement } from '../use-element.ts';

const SectionView = whenAsked(async () => (await import('./section-view.tsx')).SectionView);

const fits = (name: string): string | null =>
  name.trim() === ''
    ? 'A section has a name.'
    : name.length > MOST_SECTION_NAME
      ? `A name has no more than ${MOST_SECTION_NAME} letters.`
      : null;

/** A section: what is cut, and where. */
export function SectionPanel({ id }: { readonly id: string }) {
  const section = useElement('sections', id);
  const change = useChange('sections', id);
  if (!section) return null;
  const { name, from, to, look } = section;
  return (
    <>
      <SectionView section={section} />
      <FieldGroup name="Section">
        <TextField label="title" check={fits} value={name} onChange={(next) => change({ name: next })} />
        <PlaceFields label="from" value={from} onChange={(next) => change({ from: next })} />
        <PlaceFields label="to" value={to} onChange={(next) => change({ to: next })} />
        <LengthField label="look to the left by" value={look} onChange={(next) => change({ look: next })} />
        <button type="button" className="plain" onClick={() => change({ look: -look })}>
          Look the other way
        </button>
      </FieldGroup>
    </>
  );
}

/** The section that is drawn next. */
export function SectionForm() {
  const [{ look }, change] = useOptions('section');
  return (
    <FieldGroup name="Section" label="Section to draw">
      <LengthField label="look to the left by" value={look} onChange={(next) => change({ look: next })} />
    </FieldGroup>
  );
}
