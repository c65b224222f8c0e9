import type { Equipment } from '../../../../routing/site/site.ts';
import { ChoiceField } from '../../../parts/fields.tsx';
import { MaybeNumber } from '../../../parts/maybe-fields.tsx';

type Ratings = Pick<
  Equipment,
  | 'volts'
  | 'phases'
  | 'busAmps'
  | 'mainAmps'
  | 'managedAmps'
  | 'spaces'
  | 'kva'
  | 'primaryVolts'
  | 'secondaryVolts'
  | 'impedancePercent'
  | 'xr'
  | 'faultAmps'
  | 'existingAmps'
  | 'faultXr'
  | 'interruptingAmps'
>;

const FIELDS = [
  ['volts', 'voltage', 'V'],
  ['busAmps', 'bus', 'A'],
  ['mainAmps', 'main', 'A'],
  ['managedAmps', 'load managed to', 'A'],
  ['spaces', 'pole spaces', ''],
  ['kva', 'size', 'kVA'],
  ['primaryVolts', 'primary', 'V'],
  ['secondaryVolts', 'secondary', 'V'],
  ['impedancePercent', 'impedance', '%'],
  ['xr', 'X over R', ''],
  ['faultAmps', 'available fault', 'A'],
  ['faultXr', 'X over R of the fault', ''],
  ['existingAmps', 'measured demand', 'A'],
  ['interruptingAmps', 'interrupts', 'A'],
] as const satisfies readonly (readonly [keyof Ratings, string, string])[];

/** Ratings that only a transformer has, and those that it has not. */
const TRANSFORMER: ReadonlySet<keyof Ratings> = new Set([
  'kva',
  'primaryVolts',
  'secondaryVolts',
  'impedancePercent',
  'xr',
]);

/** Figures of the utility, at a source alone. */
const SOURCE: ReadonlySet<keyof Ratings> = new Set(['faultAmps', 'faultXr', 'existingAmps']);

/** Whether a kind of equipment can have a rating. */
const suits = (name: keyof Ratings, kind: Equipment['kind']): boolean =>
  SOURCE.has(name) ? kind === 'source' : TRANSFORMER.has(name) === (kind === 'transformer');

interface RatingProps {
  readonly equipment: Equipment;
  readonly onChange: (patch: { readonly [K in keyof Ratings]?: Ratings[K] | undefined }) => void;
}

/** What equipment is rated for: every rating that its kind can have, given or not. */
export function RatingFields({ equipment, onChange }: RatingProps) {
  return (
    <>
      <ChoiceField
        label="phases"
        value={String(equipment.phases ?? '')}
        choices={['', '1', '3']}
        words={(each) => each || 'not given'}
        onChange={(each) => onChange({ phases: each === '1' ? 1 : each === '3' ? 3 : undefined })}
      />
      {FIELDS.filter(([name]) => suits(name, equipment.kind) || equipment[name] !== undefined).map(
        ([name, label, unit]) => (
          <MaybeNumber
            key={name}
            label={label}
            unit={unit}
            none="not given"
            whole={name === 'spaces'}
            value={equipment[name] ?? null}
            onChange={(value) => onChange({ [name]: value ?? undefined })}
          />
        ),
      )}
    </>
  );
}
