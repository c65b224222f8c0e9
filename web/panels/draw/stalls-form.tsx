import { MAX_STALLS } from '../../../routing/propose/rows/row-shape.ts';
import { usualAisle } from '../../../routing/propose/rows/usual-aisle.ts';
import { usualStall } from '../../../routing/propose/rows/usual-stall.ts';
import { PARKING_WAYS } from '../../../routing/site/schema/vocabulary.ts';
import type { StallsOptions } from '../../board/draw/options.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField, TextField } from '../../parts/fields.tsx';
import { MaybeLength, MaybeNumber, PlacesField } from '../../parts/maybe-fields.tsx';
import { useOptions } from './use-options.ts';

const ANGLES = ['90', '75', '60', '45', '30', '0'] as const;
const ROWS = { one: 'one row', across: 'two, an aisle between', heads: 'two, head to head' } as const;
const LINES = { entry: 'where cars drive in', head: 'the kerb they stop at' } as const;
const LEANS = { forward: 'with the way drawn', back: 'against it' } as const;

const keys = <T extends string>(words: Readonly<Record<T, string>>): readonly T[] => Object.keys(words) as T[];

/** Another angle, with what is usual at it: the aisle where there is one, the stall where it was a usual one. */
function turned({ angle, aisle, width, depth }: StallsOptions, next: number): Partial<StallsOptions> {
  const was = usualStall(angle);
  return {
    angle: next,
    ...(aisle > 0 && { aisle: usualAisle(next) }),
    ...(width === was.width && depth === was.depth && usualStall(next)),
  };
}

/** What the row that is drawn is like; it follows as it is changed. */
export function StallsForm() {
  const [options, change] = useOptions('stalls');
  const group = { options, change };
  return (
    <>
      <RowFields {...group} />
      <EachStallFields {...group} />
      <AccessibleFields {...group} />
      <NumberFields {...group} />
    </>
  );
}

interface GroupProps {
  readonly options: StallsOptions;
  readonly change: (patch: Partial<StallsOptions>) => void;
}

/** How many rows there are, and where they lie along the line that is drawn. */
function RowFields({ options, change }: GroupProps) {
  return (
    <FieldGroup name="Row" label="Row of stalls">
      <ChoiceField
        label="rows"
        value={options.rows}
        choices={keys(ROWS)}
        words={(each) => ROWS[each]}
        onChange={(rows) => change({ rows })}
      />
      <ChoiceField
        label="the line is"
        value={options.line}
        choices={keys(LINES)}
        words={(each) => LINES[each]}
        onChange={(line) => change({ line })}
      />
      <ChoiceField
        label="stalls lie"
        value={options.side}
        choices={['left', 'right']}
        words={(each) => `on the ${each}`}
        onChange={(side) => change({ side })}
      />
      <MaybeNumber
        label={options.rows === 'one' ? 'stalls' : 'stalls a row'}
        unit=""
        whole
        none="as many as fit"
        most={MAX_STALLS}
        value={options.count}
        onChange={(count) => change({ count })}
      />
    </FieldGroup>
  );
}

/** The size and angle of a stall, the aisle before it, and who parks there. */
function EachStallFields({ options, change }: GroupProps) {
  const vehicles = useDocument((state) => state.site.vehicles);
  const usual = useDocument((state) => state.site.rules.vehicle);
  const { angle } = options;
  const angles = ANGLES.includes(String(angle) as never) ? ANGLES : ([...ANGLES, String(angle)] as const);
  return (
    <FieldGroup name="Each stall">
      <LengthField label="width" value={options.width} least={4} most={40} onChange={(width) => change({ width })} />
      <LengthField label="depth" value={options.depth} least={6} most={100} onChange={(depth) => change({ depth })} />
      <ChoiceField
        label="angle"
        value={String(angle)}
        choices={angles}
        words={(each) => (each === '0' ? 'parallel' : `${each} degrees`)}
        onChange={(each) => change(turned(options, Number(each)))}
      />
      {angle > 0 && angle !== 90 && (
        <NumberField
          label="other angle"
          unit="degrees"
          least={20}
          most={90}
          value={angle}
          onChange={(next) => change({ angle: next })}
        />
      )}
      {angle !== 90 && (
        <ChoiceField
          label="cars turn in"
          value={options.lean}
          choices={keys(LEANS)}
          words={(each) => LEANS[each]}
          onChange={(lean) => change({ lean })}
        />
      )}
      <MaybeLength
        label="drive aisle"
        none="none"
        least={0}
        most={200}
        value={options.aisle || null}
        onChange={(aisle) => change({ aisle: aisle ?? 0 })}
      />
      <ChoiceField
        label="parking"
        value={options.parking}
        choices={PARKING_WAYS}
        onChange={(parking) => change({ parking })}
      />
      <ChoiceField
        label="vehicle"
        value={options.vehicle ?? ''}
        choices={['', ...vehicles.keys()]}
        words={(each) => each || `the usual (${usual})`}
        onChange={(vehicle) => change({ vehicle: vehicle || null })}
      />
    </FieldGroup>
  );
}

/** Which stalls of the row are accessible, and how wide those are. */
function AccessibleFields({ options, change }: GroupProps) {
  return (
    <FieldGroup name="Accessible stalls">
      <PlacesField label="accessible at" value={options.accessible} onChange={(accessible) => change({ accessible })} />
      <PlacesField
        label="van accessible at"
        value={options.vanAccessible}
        onChange={(vanAccessible) => change({ vanAccessible })}
      />
      {options.accessible.length + options.vanAccessible.length > 0 && (
        <>
          <LengthField
            label="accessible width"
            value={options.accessibleWidth}
            least={6}
            most={40}
            onChange={(accessibleWidth) => change({ accessibleWidth })}
          />
          <LengthField
            label="van width"
            value={options.vanWidth}
            least={6}
            most={40}
            onChange={(vanWidth) => change({ vanWidth })}
          />
          <LengthField
            label="access aisle"
            value={options.accessAisle}
            least={3}
            most={40}
            onChange={(accessAisle) => change({ accessAisle })}
          />
        </>
      )}
    </FieldGroup>
  );
}

/** What the stalls are numbered by. */
function NumberFields({ options, change }: GroupProps) {
  return (
    <FieldGroup name="Stall numbers">
      <TextField
        label="label prefix"
        value={options.prefix}
        check={(text) => (text.length > 12 ? 'at most 12 signs' : null)}
        onChange={(prefix) => change({ prefix })}
      />
      <NumberField
        label="number from"
        unit=""
        whole
        least={1}
        most={99_999}
        value={options.start}
        onChange={(start) => change({ start })}
      />
    </FieldGroup>
  );
}
