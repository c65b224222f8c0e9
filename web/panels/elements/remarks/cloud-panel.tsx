import { MOST_MARK } from '../../../../routing/site/kinds/clouds.ts';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { useOptions } from '../../draw/use-options.ts';
import { Corners } from '../corners.tsx';
import { useChange, useElement } from '../use-element.ts';

const fits = (mark: string): string | null =>
  mark.length > MOST_MARK ? `A mark has no more than ${MOST_MARK} letters.` : null;

/** A cloud: the mark of its revision, and its corners. */
export function CloudPanel({ id }: { readonly id: string }) {
  const cloud = useElement('clouds', id);
  const change = useChange('clouds', id);
  if (!cloud) return null;
  return (
    <FieldGroup name="Cloud">
      <TextField label="mark" check={fits} value={cloud.mark} onChange={(mark) => change({ mark })} />
      <Corners outline={cloud.outline} onChange={(outline) => change({ outline })} />
    </FieldGroup>
  );
}

/** The cloud that is drawn next. */
export function CloudForm() {
  const [{ mark }, change] = useOptions('cloud');
  return (
    <FieldGroup name="Cloud" label="Cloud to draw">
      <TextField label="mark" check={fits} value={mark} onChange={(next) => change({ mark: next })} />
    </FieldGroup>
  );
}
