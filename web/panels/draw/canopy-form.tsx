import { ChoiceField, LengthField } from '../fields.tsx';
import { MaybeLength } from '../maybe-fields.tsx';
import { useOptions } from './use-options.ts';

/** What the canopy that is drawn is like. */
export function CanopyForm() {
  const [options, change] = useOptions('canopy');
  return (
    <section className="fields" aria-label="Canopy">
      <LengthField label="bays of" value={options.spacing} least={4} onChange={(spacing) => change({ spacing })} />
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
      <LengthField
        label="beams past columns"
        value={options.overhang}
        least={0}
        onChange={(overhang) => change({ overhang })}
      />
      <LengthField
        label="purlins past ends"
        value={options.endOverhang}
        least={0}
        onChange={(endOverhang) => change({ endOverhang })}
      />
      <LengthField
        label="beams at"
        value={options.beamElevation}
        least={0}
        onChange={(beamElevation) => change({ beamElevation })}
      />
      <LengthField
        label="purlins at"
        value={options.purlinElevation}
        least={0}
        onChange={(purlinElevation) => change({ purlinElevation })}
      />
      <MaybeLength
        label="purlins every"
        none="none"
        least={0.5}
        value={options.purlinSpacing || null}
        onChange={(spacing) => change({ purlinSpacing: spacing ?? 0 })}
      />
      <LengthField
        label="column side"
        value={options.columnSize}
        least={0.1}
        onChange={(columnSize) => change({ columnSize })}
      />
      <LengthField
        label="column height"
        value={options.columnHeight}
        least={0.1}
        onChange={(columnHeight) => change({ columnHeight })}
      />
      <ChoiceField
        label="gridlines"
        value={options.gridlines ? 'yes' : 'no'}
        choices={['yes', 'no']}
        words={(each) => (each === 'yes' ? 'through the columns' : 'none')}
        onChange={(each) => change({ gridlines: each === 'yes' })}
      />
    </section>
  );
}
