import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, NumberField, TextField } from '../../../parts/fields.tsx';
import { MaybeNumber } from '../../../parts/maybe-fields.tsx';
import { OwnFindings } from '../../facts/facts.tsx';
import { useChange, useElement } from '../use-element.ts';

/** A load beside the chargers, or what generates. */
export function LoadPanel({ id }: { readonly id: string }) {
  const load = useElement('loads', id);
  const change = useChange('loads', id);
  const equipment = useDocument((state) => state.site.equipment);
  if (!load) return null;
  return (
    <>
      <FieldGroup name="Load">
        <TextField label="name" value={load.name} onChange={(name) => change({ name })} />
        <ChoiceField
          label="on"
          value={load.from}
          choices={equipment.map((each) => each.id)}
          onChange={(from) => change({ from })}
        />
        <NumberField
          label="draws"
          unit="VA"
          least={Number.NEGATIVE_INFINITY}
          value={load.va}
          onChange={(va) => change({ va })}
        />
        <NumberField label="voltage" unit="V" value={load.volts} onChange={(volts) => change({ volts })} />
        <ChoiceField
          label="phases"
          value={String(load.phases)}
          choices={['1', '3']}
          words={(each) => (each === '1' ? 'single' : 'three')}
          onChange={(each) => change({ phases: each === '3' ? 3 : 1 })}
        />
        <ChoiceField
          label="continuous"
          value={load.continuous ? 'yes' : 'no'}
          choices={['yes', 'no']}
          words={(each) => (each === 'yes' ? 'three hours or more' : 'no')}
          onChange={(each) => change({ continuous: each === 'yes' })}
        />
        <ChoiceField
          label="generates"
          value={load.generation ? 'yes' : 'no'}
          choices={['no', 'yes']}
          onChange={(each) => change({ generation: each === 'yes' ? true : undefined })}
        />
        <MaybeNumber
          label="demand factor"
          unit=""
          none="1"
          most={1}
          value={load.demand ?? null}
          onChange={(demand) => change({ demand: demand ?? undefined })}
        />
        <ChoiceField
          label="is a motor"
          value={load.motor ? 'yes' : 'no'}
          choices={['no', 'yes']}
          onChange={(each) => change({ motor: each === 'yes' ? true : undefined })}
        />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}
