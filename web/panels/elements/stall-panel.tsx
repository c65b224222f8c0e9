import { PARKING_WAYS, STALL_USES } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField, PlaceFields, TextField } from '../../parts/fields.tsx';
import { spareOrShort } from '../../words/lengths.ts';
import { PARKED } from '../../words/margins.ts';
import { Fact, Facts, Link, OwnFindings } from '../facts/facts.tsx';
import { useChange, useElement } from './use-element.ts';

/** No name of a class of vehicles, which has at least one letter. */
const USUAL = '';

export function StallPanel({ id }: { readonly id: string }) {
  const stall = useElement('stalls', id);
  const change = useChange('stalls', id);
  const units = useDocument((state) => state.site.units);
  const reach = useDocument((state) => state.plan.reach);
  const vehicles = useDocument((state) => state.site.vehicles);
  const usual = useDocument((state) => state.site.rules.vehicle);
  if (!stall) return null;
  const served = reach.filter((each) => each.stall === id);
  return (
    <>
      <Facts>
        {served.length === 0 && <Fact name="served by">no charger</Fact>}
        {served.map(({ charger, coverage, worst }) => (
          <Fact key={charger} name="served by">
            <Link id={charger} />, {Math.round(coverage * 100)}% of ways and inlets; worst{' '}
            {spareOrShort(worst.margin ?? Number.NEGATIVE_INFINITY, units)} ({worst.inlet}, {PARKED[worst.direction]})
          </Fact>
        ))}
      </Facts>
      <FieldGroup name="Stall">
        <TextField
          label="label"
          value={stall.label ?? ''}
          onChange={(label) => change({ label: label === '' ? undefined : label })}
        />
        <PlaceFields label="middle of the entry" value={stall.at} onChange={(at) => change({ at })} />
        <LengthField label="width" value={stall.width} least={0.1} onChange={(width) => change({ width })} />
        <LengthField label="depth" value={stall.depth} least={0.1} onChange={(depth) => change({ depth })} />
        <NumberField
          label="heading"
          unit="degrees"
          least={Number.NEGATIVE_INFINITY}
          value={stall.heading}
          onChange={(heading) => change({ heading })}
        />
        <ChoiceField
          label="use"
          value={stall.use ?? 'standard'}
          choices={STALL_USES}
          onChange={(use) => change({ use: use === 'standard' ? undefined : use })}
        />
        <ChoiceField
          label="parking"
          value={stall.parking ?? 'either'}
          choices={PARKING_WAYS}
          onChange={(parking) => change({ parking: parking === 'either' ? undefined : parking })}
        />
        <NumberField
          label="build-out phase"
          unit=""
          whole
          least={1}
          most={9}
          value={stall.phase ?? 1}
          onChange={(phase) => change({ phase: phase === 1 ? undefined : phase })}
        />
        <ChoiceField
          label="vehicle"
          value={stall.vehicle ?? USUAL}
          choices={[USUAL, ...vehicles.keys()]}
          words={(vehicle) => (vehicle === USUAL ? `the usual, ${usual}` : vehicle)}
          onChange={(vehicle) => change({ vehicle: vehicle === USUAL ? undefined : vehicle })}
        />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}
