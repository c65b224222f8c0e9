import { USUAL_DROP, USUAL_PEDESTAL } from '../../../calc/propose/usual.ts';
import { MOUNTS, type Mount } from '../../../routing/site/schema/vocabulary.ts';
import { groundToDrawOn } from '../../board/draw/desk.ts';
import { dropOf, offered } from '../../board/draw/tools/drops.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import { useView } from '../../board/view-store.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField } from '../../parts/fields.tsx';
import { MaybeLength, MaybeNumber } from '../../parts/maybe-fields.tsx';
import { PILOT_WORDS } from '../../words/pilot-words.ts';
import { ChargeSelected } from './charge-selected.tsx';
import { useOptions } from './use-options.ts';

const MOST_OFFERED = 8;

/** What drops and their chargers are like; the stalls that the one in hand can serve; all selected stalls at once. */
export function DropsForm() {
  const [options, change] = useOptions('drops');
  const equipment = useDocument((state) => state.site.equipment);
  return (
    <>
      <ChargeSelected />
      <OfferedStalls />
      <FieldGroup name="Drop" label="Drop to place">
        <LengthField label="cord" value={options.cord} least={0.1} onChange={(cord) => change({ cord })} />
        <LengthField label="box at" value={options.elevation} onChange={(elevation) => change({ elevation })} />
        <MaybeLength
          label="retractor below box"
          none="none"
          least={0}
          value={options.retractorBelow}
          onChange={(retractorBelow) => change({ retractorBelow })}
        />
        <LengthField
          label="connector rests at"
          value={options.restHeight}
          least={0}
          onChange={(restHeight) => change({ restHeight })}
        />
        <ChoiceField
          label="mount"
          value={options.mount}
          choices={MOUNTS}
          onChange={(mount) => change({ mount, elevation: usualHeight(mount) })}
        />
      </FieldGroup>
      <FieldGroup name="Charger">
        <ChoiceField
          label="charger"
          value={options.withCharger ? 'yes' : 'no'}
          choices={['yes', 'no']}
          words={(each) => (each === 'yes' ? 'with the drop' : 'none yet')}
          onChange={(each) => change({ withCharger: each === 'yes' })}
        />
        {options.withCharger && (
          <>
            <ChoiceField
              label="fed from"
              value={options.from}
              choices={['', ...equipment.map(({ id }) => id)]}
              words={(each) => each || 'the nearest panel'}
              onChange={(from) => change({ from })}
            />
            <NumberField label="rated" unit="A" value={options.amps} onChange={(amps) => change({ amps })} />
            <MaybeNumber
              label="voltage"
              unit="V"
              none="as the panel"
              value={options.volts}
              onChange={(volts) => change({ volts })}
            />
            <ChoiceField
              label="phases"
              value={String(options.phases)}
              choices={['1', '3']}
              words={(each) => (each === '1' ? 'single, line to line' : 'three')}
              onChange={(each) => change({ phases: each === '3' ? 3 : 1 })}
            />
            <ChoiceField
              label="pilot"
              value={options.pilot ? 'yes' : 'no'}
              choices={['yes', 'no']}
              words={(each) => (each === 'yes' ? PILOT_WORDS.yes : PILOT_WORDS.no)}
              onChange={(each) => change({ pilot: each === 'yes' })}
            />
          </>
        )}
      </FieldGroup>
    </>
  );
}

const usualHeight = (mount: Mount): number => (mount === 'overhead' ? USUAL_DROP.elevation : USUAL_PEDESTAL.elevation);

/** The stalls that the drop in hand reaches, the best covered first. */
function OfferedStalls() {
  const desk = useDesk();
  const [options, change] = useOptions('drops');
  const draft = useView((state) => state.draft);
  if (!draft?.whole) return null;
  const { site } = groundToDrawOn(desk);
  const drop = dropOf(site, draft, options);
  const stalls = drop ? offered(site, drop) : [];
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  if (stalls.length === 0) return <p className="quiet">No stall is within reach of its cord.</p>;
  const first = stalls.find(({ served }) => !served)?.stall;
  const chosen = options.stalls ?? (first ? [first] : []);
  return (
    <fieldset className="checks-field offered">
      <legend>serves</legend>
      {stalls.slice(0, MOST_OFFERED).map(({ stall, coverage, served }) => (
        <label key={stall}>
          <input
            type="checkbox"
            checked={chosen.includes(stall)}
            onChange={(event) =>
              change({ stalls: event.target.checked ? [...chosen, stall] : chosen.filter((each) => each !== stall) })
            }
          />
          stall {labels.get(stall)}, {Math.floor(coverage * 100 + 1e-9)}% covered{served ? ', served already' : ''}
        </label>
      ))}
    </fieldset>
  );
}
