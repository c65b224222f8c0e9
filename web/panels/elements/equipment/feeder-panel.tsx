import type { SupplyFeeder } from '../../../../calc/plan-file/supply.ts';
import { devicePlace } from '../../../../calc/supply/devices/device-place.ts';
import { equipmentDevices } from '../../../../calc/supply/devices/devices.ts';
import { protectorsOf } from '../../../../calc/supply/devices/protecting.ts';
import { isLengthKnown } from '../../../../calc/supply/feeders/feeder-known.ts';
import { CONDUCTOR_SIZES } from '../../../../calc/tables/sizes.ts';
import { whyFeeder } from '../../../../calc/why/why-supply.ts';
import {
  DEVICE_PLACES,
  INSULATIONS,
  METALS,
  METHODS,
  metalOf,
  TAP_CONDITIONS,
} from '../../../../routing/site/schema/vocabulary.ts';
import type { Feeder, Site } from '../../../../routing/site/site.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, NumberField } from '../../../parts/fields.tsx';
import { MaybeLength, MaybeNumber } from '../../../parts/maybe-fields.tsx';
import { DEVICE_WORDS, TAP_WORDS } from '../../../words/device-words.ts';
import { nearestInch } from '../../../words/lengths.ts';
import { Fact, Facts, OwnFindings } from '../../facts/facts.tsx';
import { Why } from '../../facts/why.tsx';
import { useChange, useElement } from '../use-element.ts';
import { FeederWayRows } from './feeder-ways.tsx';
import { DeviceFields } from './protection-fields.tsx';

/** A feeder: what the plan makes of it, and everything that the file says of it. */
export function FeederPanel({ id }: { readonly id: string }) {
  const feeder = useElement('feeders', id);
  const change = useChange('feeders', id);
  const supply = useDocument((state) => state.plan.supply.feeders.find((each) => each.id === id));
  const site = useDocument((state) => state.site);
  if (!feeder) return null;
  const { conductor } = feeder;
  const ids = site.equipment.map((each) => each.id);
  return (
    <>
      {supply && <FeederFacts feeder={feeder} supply={supply} site={site} />}
      <FieldGroup name="Feeder">
        <ChoiceField label="from" value={feeder.from} choices={ids} onChange={(from) => change({ from })} />
        <ChoiceField label="to" value={feeder.to} choices={ids} onChange={(to) => change({ to })} />
        <NumberField
          label="breaker"
          unit="A"
          value={feeder.breakerAmps}
          onChange={(breakerAmps) => change({ breakerAmps })}
        />
        <ConductorFields conductor={conductor} change={(next) => change({ conductor: next })} />
        <ChoiceField
          label="raceway"
          value={feeder.raceway ?? ''}
          choices={['', ...METHODS]}
          words={(each) => each || 'as it is routed'}
          onChange={(raceway) => change({ raceway: raceway === '' ? undefined : raceway })}
        />
        <MaybeLength
          label="length"
          none="as it is routed"
          least={0}
          value={feeder.length ?? null}
          onChange={(length) => change({ length: length ?? undefined })}
        />
        <ChoiceField
          label="stands"
          value={feeder.existing ? 'yes' : 'no'}
          choices={['yes', 'no']}
          words={(each) => (each === 'yes' ? 'already' : 'to be installed')}
          onChange={(each) => change({ existing: each === 'yes' ? true : undefined })}
        />
        <ChoiceField
          label="device stands"
          value={feeder.device ?? ''}
          choices={['', ...DEVICE_PLACES]}
          words={(each) => (each === '' ? usualPlace(site, feeder) : DEVICE_WORDS[each])}
          onChange={(device) => change({ device: device === '' ? undefined : device })}
        />
        <ChoiceField
          label="lies outdoors"
          value={feeder.outdoors === undefined ? '' : feeder.outdoors ? 'yes' : 'no'}
          choices={['', 'yes', 'no']}
          words={(each) => (each === '' ? 'where it is in the ground' : each === 'yes' ? 'all the way' : 'no')}
          onChange={(each) => change({ outdoors: each === '' ? undefined : each === 'yes' })}
        />
        <DeviceFields device={feeder} onChange={change} />
        <ChoiceField
          label="tapped in"
          value={feeder.tapCondition ?? ''}
          choices={['', ...TAP_CONDITIONS]}
          words={(each) => TAP_WORDS[each]}
          onChange={(each) => change({ tapCondition: each === '' ? undefined : each })}
        />
      </FieldGroup>
      {feeder.existing === true && <FeederWayRows id={id} />}
      <OwnFindings id={id} />
    </>
  );
}

/** What the plan makes of a feeder, with the devices that protect it, and the steps behind the figures. */
function FeederFacts({ feeder, supply, site }: FactsProps) {
  const { id } = feeder;
  const { units } = site;
  const isKnown = isLengthKnown(feeder, supply);
  const devices = protectorsOf(equipmentDevices(site)).get(id) ?? [];
  return (
    <>
      <Facts>
        <Fact name="runs">{isKnown ? nearestInch(supply.length, units) : '–'}</Fact>
        <Fact name="drop">{isKnown ? `${supply.dropPercent.toFixed(2)}%` : '–, its length is not known'}</Fact>
        <Fact name="loaded">{supply.percentLoaded.toFixed(0)}%</Fact>
        {devices.map(({ id: device, at, amps, poles, known }) => (
          <Fact key={device} name="device">
            {amps} A, {poles} pole, at {at}
            {known === 'assumed' ? ', as usual' : ''}
          </Fact>
        ))}
      </Facts>
      <Why ask="Why these figures?" steps={() => whyFeeder(site, id)} />
    </>
  );
}

interface FactsProps {
  readonly feeder: Feeder;
  readonly supply: SupplyFeeder;
  readonly site: Site;
}

/** The conductors of a feeder: their sets, size, metal and insulation, and how many carry current beside them. */
function ConductorFields({ conductor, change }: ConductorProps) {
  const set = (patch: Partial<Conductor>): void => change({ ...conductor, ...patch });
  return (
    <>
      <NumberField
        label="parallel sets"
        unit=""
        whole
        least={1}
        value={conductor.sets}
        onChange={(sets) => set({ sets })}
      />
      <ChoiceField
        label="size"
        value={conductor.size}
        choices={CONDUCTOR_SIZES.includes(conductor.size) ? CONDUCTOR_SIZES : [conductor.size, ...CONDUCTOR_SIZES]}
        onChange={(size) => set({ size })}
      />
      <ChoiceField
        label="metal"
        value={metalOf(conductor.metal)}
        choices={METALS}
        onChange={(metal) => set({ metal })}
      />
      <ChoiceField
        label="insulation"
        value={conductor.insulation}
        choices={INSULATIONS}
        onChange={(insulation) => set({ insulation })}
      />
      <MaybeNumber
        label="carrying in its raceway"
        unit=""
        none="3, nothing else in it"
        whole
        least={3}
        most={500}
        value={conductor.currentCarrying ?? null}
        onChange={(next) => {
          const { currentCarrying: _, ...rest } = conductor;
          change(next === null ? rest : { ...rest, currentCarrying: next });
        }}
      />
    </>
  );
}

type Conductor = Feeder['conductor'];

interface ConductorProps {
  readonly conductor: Conductor;
  readonly change: (conductor: Conductor) => void;
}

/** What it means that a feeder does not say where its device stands. */
function usualPlace({ equipment }: Site, { from }: Feeder): string {
  const feeds = equipment.find(({ id }) => id === from);
  return feeds === undefined ? DEVICE_WORDS[''] : `${DEVICE_WORDS['']}: ${DEVICE_WORDS[devicePlace({}, feeds)]}`;
}
