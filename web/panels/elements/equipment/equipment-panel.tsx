import type { FaultAmps } from '../../../../calc/plan-file/supply.ts';
import { bondedWords } from '../../../../calc/supply/bonding/bonded-words.ts';
import { faultLabel } from '../../../../calc/supply/fault/fault-labels.ts';
import { treeOf } from '../../../../calc/supply/tree/supply-lines.ts';
import { systemName } from '../../../../calc/supply/tree/system.ts';
import { whyEquipment } from '../../../../calc/why/why-supply.ts';
import {
  ELECTRODE_WORDS,
  ELECTRODES,
  EQUIPMENT_KINDS,
  EQUIPMENT_WORDS,
} from '../../../../routing/site/schema/vocabulary.ts';
import type { Equipment } from '../../../../routing/site/site.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField, PlaceFields } from '../../../parts/fields.tsx';
import { MaybeLength } from '../../../parts/maybe-fields.tsx';
import { Fact, Facts, Links, OwnFindings } from '../../facts/facts.tsx';
import { Why } from '../../facts/why.tsx';
import { CutHere } from '../remarks/cut-here.tsx';
import { useChange, useElement } from '../use-element.ts';
import { EquipmentFeeds } from './equipment-feeds.tsx';
import { LoadCalculationFacts } from './load-calculation.tsx';
import { BoardFields } from './protection-fields.tsx';
import { RatingFields } from './rating-fields.tsx';

/** Conditions by which the code asks for the depth of a working space. */
const CONDITION_WORDS = {
  '': 'as drawn',
  '1': 'nothing grounded, condition 1',
  '2': 'grounded parts, condition 2',
  '3': 'live parts, condition 3',
} as const;

function faultWords({ kind, interruptingAmps }: Equipment, fault: FaultAmps | undefined): string {
  const neutral = fault?.lineToNeutral === undefined ? '' : `, ${Math.round(fault.lineToNeutral)} A to neutral`;
  const here =
    fault === undefined
      ? 'no figure given for the source'
      : `${Math.round(fault.most)} A${neutral}${fault.motorAmps === undefined ? '' : `, ${Math.round(fault.motorAmps)} A of motors`}`;
  if (kind === 'source' || kind === 'transformer') return here;
  return `${here}; ${interruptingAmps === undefined ? 'no interrupting rating entered' : `interrupts ${interruptingAmps} A`}`;
}

export function EquipmentPanel({ id }: { readonly id: string }) {
  const equipment = useElement('equipment', id);
  const change = useChange('equipment', id);
  const plan = useDocument((state) => state.plan);
  const site = useDocument((state) => state.site);
  if (!equipment) return null;
  const supply = plan.supply.equipment.find((each) => each.id === id);
  const fed = plan.runs.filter(({ from }) => from === id).map(({ charger }) => charger);
  const onward = site.feeders.filter(({ from }) => from === id).map(({ to }) => to);
  const size = equipment.size;
  const node = treeOf(site).nodes.find(({ equipment: { id: one } }) => one === id);
  const isBoard = equipment.kind !== 'source' && equipment.kind !== 'transformer';
  const label = supply && node && isBoard ? faultLabel(supply, systemName(node.system)) : null;
  const bonded = plan.supply.bonded.filter((one) => one.id === id).flatMap(bondedWords);
  return (
    <>
      <Facts>
        <Fact name="feeds">
          <Links ids={[...onward, ...fed]} />
        </Fact>
        {supply && (
          <>
            <Fact name="connected">{(supply.connectedVa / 1000).toFixed(1)} kVA</Fact>
            <Fact name="demand">
              {supply.demandAmps.toFixed(0)} A
              {supply.percentLoaded === undefined ? '' : `, ${supply.percentLoaded.toFixed(0)}% loaded`}
            </Fact>
            {supply.unitDemandAmps !== undefined && (
              <Fact name="by least loads">
                {supply.unitDemandAmps.toFixed(0)} A, no charger for less than the code has it
              </Fact>
            )}
            <Fact name="lines">
              A {supply.amps.A.toFixed(0)}, B {supply.amps.B.toFixed(0)}, C {supply.amps.C.toFixed(0)} A
            </Fact>
            {supply.spareSpaces !== undefined && <Fact name="spare spaces">{supply.spareSpaces}</Fact>}
            {supply.highestVolts !== undefined && (
              <Fact name="highest volts">{supply.highestVolts.toFixed(1)} V, generation alone</Fact>
            )}
            <Fact name="fault current">{faultWords(equipment, supply.fault)}</Fact>
            {label !== null && <Fact name="label">{label}</Fact>}
            {bonded.map((words) => (
              <Fact key={words} name="grounding">
                {words}
              </Fact>
            ))}
          </>
        )}
      </Facts>
      {supply && <Why ask="Why these figures?" steps={() => whyEquipment(site, id)} />}
      <LoadCalculationFacts id={id} />
      <FieldGroup name="Equipment">
        <ChoiceField
          label="kind"
          value={equipment.kind}
          choices={EQUIPMENT_KINDS}
          words={(each) => EQUIPMENT_WORDS[each]}
          onChange={(kind) => change({ kind })}
        />
        <ChoiceField
          label="stands"
          value={equipment.existing ? 'yes' : 'no'}
          choices={['yes', 'no']}
          words={(each) => (each === 'yes' ? 'already' : 'to be installed')}
          onChange={(each) => change({ existing: each === 'yes' ? true : undefined })}
        />
        <PlaceFields label="center" value={equipment.at} onChange={(at) => change({ at })} />
        <PlaceFields label="entry" value={equipment.entry} onChange={(entry) => change({ entry })} />
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
          value={equipment.rotation ?? 0}
          onChange={(rotation) => change({ rotation: rotation === 0 ? undefined : rotation })}
        />
        <MaybeLength
          label="working space"
          none="not given"
          least={0.1}
          value={equipment.workingSpace ?? null}
          onChange={(workingSpace) => change({ workingSpace: workingSpace ?? undefined })}
        />
        <ChoiceField
          label="opposite it"
          value={String(equipment.condition ?? '')}
          choices={['', '1', '2', '3']}
          words={(each) => CONDITION_WORDS[each as keyof typeof CONDITION_WORDS]}
          onChange={(each) => change({ condition: each === '' ? undefined : (Number(each) as 1 | 2 | 3) })}
        />
        <ChoiceField
          label="grounded to"
          value={equipment.electrode ?? ''}
          choices={['', ...ELECTRODES]}
          words={(each) => (each === '' ? 'not given' : ELECTRODE_WORDS[each])}
          onChange={(each) => change({ electrode: each === '' ? undefined : each })}
        />
        <RatingFields equipment={equipment} onChange={change} />
        {isBoard && <BoardFields board={equipment} onChange={change} />}
      </FieldGroup>
      <EquipmentFeeds id={id} />
      <CutHere list="equipment" id={id} />
      <OwnFindings id={id} />
    </>
  );
}
