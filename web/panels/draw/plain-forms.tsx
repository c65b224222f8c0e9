import { AISLE_KINDS, AISLE_WORDS, KEEPOUT_BLOCKS } from '../../../routing/site/schema/vocabulary.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField } from '../../parts/fields.tsx';
import { MaybeLength } from '../../parts/maybe-fields.tsx';
import { ChecksField } from '../elements/checks-field.tsx';
import { useOptions } from './use-options.ts';

export function KeepoutForm() {
  const [options, change] = useOptions('keepout');
  return (
    <FieldGroup name="Keep-out" label="Keep-out to draw">
      <ChoiceField
        label="drawn"
        value={options.shape}
        choices={['corners', 'round']}
        words={(each) => (each === 'corners' ? 'by its corners' : 'round, at one press')}
        onChange={(shape) => change({ shape })}
      />
      {options.shape === 'round' && (
        <LengthField
          label="across"
          value={options.across}
          least={0.1}
          most={100}
          onChange={(across) => change({ across })}
        />
      )}
      <ChecksField
        label="keeps out"
        choices={KEEPOUT_BLOCKS}
        value={options.blocks}
        onChange={(blocks) => change({ blocks })}
      />
      <MaybeLength label="from" none="grade and below" value={options.from} onChange={(from) => change({ from })} />
      <MaybeLength label="to" none="any height" value={options.to} onChange={(to) => change({ to })} />
    </FieldGroup>
  );
}

export function AisleForm() {
  const [{ kind }, change] = useOptions('aisle');
  return (
    <FieldGroup name="Aisle" label="Aisle to draw">
      <ChoiceField
        label="kind"
        value={kind}
        choices={AISLE_KINDS}
        words={(each) => AISLE_WORDS[each]}
        onChange={(next) => change({ kind: next })}
      />
    </FieldGroup>
  );
}

export function ElevationForm({ tool }: { readonly tool: 'pullpoint' | 'member' }) {
  const [options, change] = useOptions(tool);
  return (
    <FieldGroup name="Elevation">
      <LengthField label="elevation" value={options.elevation} onChange={(elevation) => change({ elevation })} />
    </FieldGroup>
  );
}

export function ColumnForm() {
  const [{ size, rotation, height }, change] = useOptions('column');
  const [a, b] = size;
  return (
    <FieldGroup name="Column" label="Column to place">
      <LengthField label="width" value={a} least={0.1} onChange={(next) => change({ size: [next, b] })} />
      <LengthField label="depth" value={b} least={0.1} onChange={(next) => change({ size: [a, next] })} />
      <NumberField
        label="rotation"
        unit="degrees"
        least={Number.NEGATIVE_INFINITY}
        value={rotation}
        onChange={(next) => change({ rotation: next })}
      />
      <MaybeLength
        label="height"
        none="not given"
        least={0.1}
        value={height}
        onChange={(next) => change({ height: next })}
      />
    </FieldGroup>
  );
}
