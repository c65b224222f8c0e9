import { canopyWidth } from '../../../routing/propose/rows/canopy-bays.ts';
import {
  CANOPY_FORMS,
  LEVELS_AT,
  MAX_TILT,
  type RoofForm,
  riseOf,
  tiltOf,
} from '../../../routing/propose/rows/canopy-slope.ts';
import type { CanopyOptions } from '../../board/draw/options.ts';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, DegreesField, LengthField } from '../../parts/fields.tsx';
import { MaybeLength } from '../../parts/maybe-fields.tsx';
import { useOptions } from './use-options.ts';

const FORM_WORDS: Readonly<Record<RoofForm, string>> = {
  flat: 'flat',
  'one slope': 'one slope',
  valley: 'valley: low in the middle',
  ridge: 'ridge: high in the middle',
};

/** What the canopy that is drawn is like. */
export function CanopyForm() {
  const [options, change] = useOptions('canopy');
  return (
    <>
      <FieldGroup name="Bays" label="Canopy">
        <LengthField
          label="bays of"
          value={options.spacing}
          least={4}
          most={200}
          onChange={(spacing) => change({ spacing })}
        />
        <ChoiceField
          label="columns in"
          value={String(options.columnLines)}
          choices={['1', '2']}
          words={(each) => (each === '1' ? 'one line' : 'two lines')}
          onChange={(each) => change({ columnLines: each === '2' ? 2 : 1 })}
        />
        {options.columnLines === 2 && (
          <>
            <LengthField
              label="lines apart"
              value={options.lineGap}
              least={1}
              most={300}
              onChange={(lineGap) => change({ lineGap })}
            />
            <ChoiceField
              label="second line"
              value={options.side}
              choices={['left', 'right']}
              words={(each) => `on the ${each}`}
              onChange={(side) => change({ side })}
            />
          </>
        )}
      </FieldGroup>
      <FieldGroup name="Overhang">
        <LengthField
          label="beams past columns"
          value={options.overhang}
          least={0}
          most={200}
          onChange={(overhang) => change({ overhang })}
        />
        <LengthField
          label="purlins past ends"
          value={options.endOverhang}
          least={0}
          most={200}
          onChange={(endOverhang) => change({ endOverhang })}
        />
      </FieldGroup>
      <FieldGroup name="Roof">
        <ChoiceField
          label="form"
          value={options.form}
          choices={CANOPY_FORMS}
          words={(each) => FORM_WORDS[each]}
          onChange={(form) => change({ form })}
        />
        {options.form !== 'flat' && <SlopeFields options={options} change={change} />}
        <LengthField
          label={options.form !== 'flat' && options.levelAt === 'low edge' ? 'low edge at' : 'beams at'}
          value={options.beamElevation}
          least={0.1}
          most={100}
          onChange={(beamElevation) => change({ beamElevation })}
        />
      </FieldGroup>
      <FieldGroup name="Steel">
        <LengthField
          label="purlins above beams"
          value={options.purlinsAbove}
          onChange={(purlinsAbove) => change({ purlinsAbove })}
        />
        <MaybeLength
          label="purlins every"
          none="none"
          least={0.5}
          most={200}
          value={options.purlinSpacing || null}
          onChange={(spacing) => change({ purlinSpacing: spacing ?? 0 })}
        />
        <LengthField
          label="column side"
          value={options.columnSize}
          least={0.1}
          most={20}
          onChange={(columnSize) => change({ columnSize })}
        />
        <ChoiceField
          label="gridlines"
          value={options.gridlines ? 'yes' : 'no'}
          choices={['yes', 'no']}
          words={(each) => (each === 'yes' ? 'through the columns' : 'none')}
          onChange={(each) => change({ gridlines: each === 'yes' })}
        />
      </FieldGroup>
    </>
  );
}

interface SlopeProps {
  readonly options: CanopyOptions;
  readonly change: (patch: Partial<CanopyOptions>) => void;
}

/** How a canopy is tilted: by degrees or by its rise, to which side, and where its elevation is given. */
function SlopeFields({ options, change }: SlopeProps) {
  const width = canopyWidth(options);
  const { form } = options;
  return (
    <>
      <DegreesField
        label="tilt"
        value={options.tilt}
        decimals={2}
        least={0}
        most={MAX_TILT}
        onChange={(tilt) => change({ tilt })}
      />
      <LengthField
        label={form === 'one slope' ? 'rise over the width' : 'rise over half the width'}
        value={riseOf(options, width)}
        least={0}
        onChange={(rise) => {
          const tilt = tiltOf(rise, form, width);
          if (tilt !== null) change({ tilt });
        }}
      />
      {form === 'one slope' && (
        <ChoiceField
          label="rises"
          value={options.rises}
          choices={['left', 'right']}
          words={(each) => `to the ${each} of the line`}
          onChange={(rises) => change({ rises })}
        />
      )}
      <ChoiceField
        label="elevation given"
        value={options.levelAt}
        choices={LEVELS_AT}
        words={(each) => (each === 'columns' ? 'over the drawn columns' : 'at the low edge')}
        onChange={(levelAt) => change({ levelAt })}
      />
    </>
  );
}
