import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { LengthField, PlaceFields } from '../../../parts/fields.tsx';
import { useOptions } from '../../draw/use-options.ts';
import { Fact, Facts } from '../../facts/facts.tsx';
import { useChange, useElement } from '../use-element.ts';

/** A dimension: what it measures, and how far off its line lies. */
export function DimensionPanel({ id }: { readonly id: string }) {
  const dimension = useElement('dimensions', id);
  const change = useChange('dimensions', id);
  const units = useDocument((state) => state.site.units);
  if (!dimension) return null;
  const { from, to, offset } = dimension;
  return (
    <>
      <Facts>
        <Fact name="length">{printLength(Math.hypot(to[0] - from[0], to[1] - from[1]), units)}</Fact>
      </Facts>
      <FieldGroup name="Dimension">
        <PlaceFields label="from" value={from} onChange={(next) => change({ from: next })} />
        <PlaceFields label="to" value={to} onChange={(next) => change({ to: next })} />
        <LengthField label="line to the left by" value={offset} onChange={(next) => change({ offset: next })} />
      </FieldGroup>
    </>
  );
}

/** The dimension that is drawn next. */
export function DimensionForm() {
  const [{ offset }, change] = useOptions('dimension');
  return (
    <FieldGroup name="Dimension" label="Dimension to draw">
      <LengthField label="line to the left by" value={offset} onChange={(next) => change({ offset: next })} />
    </FieldGroup>
  );
}
