import { EQUIPMENT_KINDS, EQUIPMENT_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import { groundToDrawOn } from '../../board/draw/desk.ts';
import type { EquipmentOptions } from '../../board/draw/options.ts';
import { KIND_DEFAULTS } from '../../board/draw/tools/equipment.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField } from '../../parts/fields.tsx';
import { MaybeLength, MaybeNumber } from '../../parts/maybe-fields.tsx';
import { useOptions } from './use-options.ts';

/** The equipment that is placed: its kind and size, its rating, its working space and what feeds it. */
export function EquipmentForm() {
  const [options, change] = useOptions('equipment');
  const desk = useDesk();
  useDocument((state) => state.site.equipment);
  const { kind, size } = options;
  // What is under the hand is on the site as it is shown, and cannot feed itself.
  const feeds = groundToDrawOn(desk).site.equipment.map(({ id }) => id);
  return (
    <>
      <FieldGroup name="Equipment" label="Equipment to place">
        <ChoiceField
          label="kind"
          value={kind}
          choices={EQUIPMENT_KINDS}
          words={(each) => EQUIPMENT_WORDS[each]}
          onChange={(next) => change({ kind: next, ...KIND_DEFAULTS[next] })}
        />
        {(['width', 'depth', 'height'] as const).map((name, axis) => (
          <LengthField
            key={name}
            label={name}
            value={size[axis]!}
            least={0.1}
            onChange={(next) =>
              change({ size: size.map((was, i) => (i === axis ? next : was)) as unknown as typeof size })
            }
          />
        ))}
        <NumberField
          label="rotation"
          unit="degrees"
          least={Number.NEGATIVE_INFINITY}
          value={options.rotation}
          onChange={(rotation) => change({ rotation })}
        />
        <LengthField label="entry at" value={options.entryHeight} onChange={(entryHeight) => change({ entryHeight })} />
      </FieldGroup>
      <RatingFields options={options} change={change} />
      <FieldGroup name="Working space and feeder">
        <MaybeLength
          label="working space"
          none="not given"
          least={0.1}
          value={options.workingSpace}
          onChange={(workingSpace) => change({ workingSpace })}
        />
        <ChoiceField
          label="fed from"
          value={feeds.includes(options.fedFrom) ? options.fedFrom : ''}
          choices={['', ...feeds]}
          words={(each) => each || 'nothing yet'}
          onChange={(fedFrom) => change({ fedFrom })}
        />
      </FieldGroup>
    </>
  );
}

/** What the equipment is rated for, by its kind. */
function RatingFields({ options, change }: RatingProps) {
  const { kind } = options;
  const transformer = kind === 'transformer';
  return (
    <FieldGroup name="Rating">
      {!transformer && (
        <MaybeNumber
          label="voltage"
          unit="V"
          none="not given"
          value={options.volts}
          onChange={(volts) => change({ volts })}
        />
      )}
      {transformer && (
        <>
          <MaybeNumber
            label="size"
            unit="kVA"
            none="not given"
            value={options.kva}
            onChange={(kva) => change({ kva })}
          />
          <MaybeNumber
            label="primary"
            unit="V"
            none="not given"
            value={options.primaryVolts}
            onChange={(primaryVolts) => change({ primaryVolts })}
          />
          <MaybeNumber
            label="secondary"
            unit="V"
            none="not given"
            value={options.secondaryVolts}
            onChange={(secondaryVolts) => change({ secondaryVolts })}
          />
        </>
      )}
      <ChoiceField
        label="phases"
        value={String(options.phases ?? '')}
        choices={['', '1', '3']}
        words={(each) => each || 'not given'}
        onChange={(each) => change({ phases: each === '1' ? 1 : each === '3' ? 3 : null })}
      />
      {kind !== 'source' && !transformer && (
        <>
          <MaybeNumber
            label="bus"
            unit="A"
            none="not given"
            value={options.busAmps}
            onChange={(busAmps) => change({ busAmps })}
          />
          <MaybeNumber
            label="main"
            unit="A"
            none="not given"
            value={options.mainAmps}
            onChange={(mainAmps) => change({ mainAmps })}
          />
          <MaybeNumber
            label="pole spaces"
            unit=""
            whole
            none="not given"
            value={options.spaces}
            onChange={(spaces) => change({ spaces })}
          />
        </>
      )}
    </FieldGroup>
  );
}

interface RatingProps {
  readonly options: EquipmentOptions;
  readonly change: (patch: Partial<EquipmentOptions>) => void;
}
