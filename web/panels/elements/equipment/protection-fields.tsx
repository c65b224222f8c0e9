import { ARC_REDUCTIONS, ARC_WORDS, type ArcReduction } from '../../../../routing/site/schema/vocabulary.ts';
import type { Equipment } from '../../../../routing/site/site.ts';
import { ChoiceField, TextField } from '../../../parts/fields.tsx';
import { MaybeNumber } from '../../../parts/maybe-fields.tsx';
import { GIVEN_WORDS } from '../../../words/device-words.ts';

interface DeviceFieldsProps {
  readonly device: {
    readonly groundFault?: boolean | undefined;
    readonly arcEnergy?: ArcReduction | undefined;
  };
  readonly onChange: (patch: {
    readonly groundFault?: boolean | undefined;
    readonly arcEnergy?: ArcReduction | undefined;
  }) => void;
}

/** What an overcurrent device has beside its rating. */
export function DeviceFields({ device: { groundFault, arcEnergy }, onChange }: DeviceFieldsProps) {
  return (
    <>
      <YesNoField
        label="ground-fault protection"
        value={groundFault}
        onChange={(next) => onChange({ groundFault: next })}
      />
      <ChoiceField
        label="less arc energy by"
        value={arcEnergy ?? ''}
        choices={['', ...ARC_REDUCTIONS]}
        words={(each) => (each === '' ? 'not given' : ARC_WORDS[each])}
        onChange={(each) => onChange({ arcEnergy: each === '' ? undefined : each })}
      />
    </>
  );
}

const NOT_GIVEN = GIVEN_WORDS[''];

type Board = Pick<Equipment, 'groundFault' | 'arcEnergy' | 'lockable' | 'seriesAmps' | 'seriesWith'>;

interface BoardFieldsProps {
  readonly board: Board;
  readonly onChange: (patch: { readonly [K in keyof Board]?: Board[K] | undefined }) => void;
}

/** What the devices of a board have and can do. */
export function BoardFields({ board, onChange }: BoardFieldsProps) {
  return (
    <>
      <MaybeNumber
        label="series rated to"
        unit="A"
        none="not given"
        value={board.seriesAmps ?? null}
        onChange={(seriesAmps) => onChange({ seriesAmps: seriesAmps ?? undefined })}
      />
      <TextField
        label="series rated with"
        value={board.seriesWith ?? NOT_GIVEN}
        onChange={(text) => onChange({ seriesWith: text === '' || text === NOT_GIVEN ? undefined : text })}
      />
      <DeviceFields device={board} onChange={onChange} />
      <YesNoField label="breakers lock open" value={board.lockable} onChange={(lockable) => onChange({ lockable })} />
    </>
  );
}

interface YesNoProps {
  readonly label: string;
  readonly value: boolean | undefined;
  readonly onChange: (next: boolean | undefined) => void;
}

function YesNoField({ label, value, onChange }: YesNoProps) {
  return (
    <ChoiceField
      label={label}
      value={value === undefined ? '' : value ? 'true' : 'false'}
      choices={['', 'true', 'false']}
      words={(each) => GIVEN_WORDS[each]}
      onChange={(each) => onChange(each === '' ? undefined : each === 'true')}
    />
  );
}
