import type { PlannedBox } from '../../../calc/plan-file/branches.ts';
import { slopeOf } from '../../../routing/plane/space.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField, PlaceFields } from '../../parts/fields.tsx';
import { MaybeLength } from '../../parts/maybe-fields.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { Fact, Facts, OwnFindings } from '../facts/facts.tsx';
import { MemberLoads } from './member-loads.tsx';
import { useChange, useElement } from './use-element.ts';

interface PanelProps {
  readonly id: string;
}

export function ColumnPanel({ id }: PanelProps) {
  const column = useElement('columns', id);
  const change = useChange('columns', id);
  if (!column) return null;
  const [a, b] = column.size;
  return (
    <>
      <FieldGroup name="Column">
        <PlaceFields label="center" value={column.at} onChange={(at) => change({ at })} />
        <LengthField label="width" value={a} least={0.01} onChange={(next) => change({ size: [next, b] })} />
        <LengthField label="depth" value={b} least={0.01} onChange={(next) => change({ size: [a, next] })} />
        <NumberField
          label="rotation"
          unit="degrees"
          least={Number.NEGATIVE_INFINITY}
          value={column.rotation ?? 0}
          onChange={(rotation) => change({ rotation: rotation === 0 ? undefined : rotation })}
        />
        <MaybeLength
          label="height"
          none="not given"
          value={column.height ?? null}
          least={0.1}
          onChange={(height) => change({ height: height ?? undefined })}
        />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

export function MemberPanel({ id }: PanelProps) {
  const member = useElement('members', id);
  const change = useChange('members', id);
  const units = useDocument((state) => state.site.units);
  if (!member) return null;
  const { low, high, length, degrees } = slopeOf(member.from, member.to);
  const level = high - low < 0.005;
  return (
    <>
      <Facts>
        <Fact name="elevation">
          {level ? printLength(low, units) : `${printLength(low, units)} to ${printLength(high, units)}`}
        </Fact>
        <Fact name="slope">{level ? 'level' : `${degrees.toFixed(1)}°, ${printLength(high - low, units)} in all`}</Fact>
        <Fact name="length">{printLength(length, units)}</Fact>
      </Facts>
      <FieldGroup name="Beam or purlin" label="Member">
        <ChoiceField
          label="stands"
          value={member.stringer ? 'yes' : 'no'}
          choices={['no', 'yes']}
          words={(each) => (each === 'yes' ? 'a stringer to be put in' : 'already, or by others')}
          onChange={(each) => change({ stringer: each === 'yes' ? true : undefined })}
        />
        <PlaceFields label="from" value={member.from} onChange={(from) => change({ from })} />
        <PlaceFields label="to" value={member.to} onChange={(to) => change({ to })} />
      </FieldGroup>
      <MemberLoads id={id} />
    </>
  );
}

export function PullpointPanel({ id }: PanelProps) {
  const pullpoint = useElement('pullpoints', id);
  const change = useChange('pullpoints', id);
  const conduits = useDocument((state) => state.plan.conduits);
  const boxes = useDocument((state) => state.plan.boxes);
  const handholes = useDocument((state) => state.plan.handholes);
  const units = useDocument((state) => state.site.units);
  if (!pullpoint) return null;
  const own = conduits.filter(({ from, to }) => from === id || to === id);
  const handhole = handholes.find((one) => one.id === id);
  const box = boxes.find((one) => one.id === id);
  return (
    <>
      <Facts>
        {handhole && (
          <Fact name="handhole">
            {handhole.size}, {handhole.rating}
          </Fact>
        )}
        {box && !handhole && <Fact name="box">{boxWords(box)}</Fact>}
        {box && own.length === 0 && <Fact name="feeders through it">{box.conduits.join(', ')}</Fact>}
        {own.map((conduit) => (
          <Fact key={conduit.id} name={conduit.to === id ? `from ${conduit.from}` : `to ${conduit.to}`}>
            {conduit.tradeSize ? `${conduit.tradeSize}" ` : ''}
            {conduit.method}, {nearestInch(conduit.length, units)}
          </Fact>
        ))}
      </Facts>
      <FieldGroup name="Pull point">
        <PlaceFields label="place" value={pullpoint.at} onChange={(at) => change({ at })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

/** What a box above grade has at least to be. */
const boxWords = ({ box, volume, length }: PlannedBox): string => {
  if (length !== null) return `pull box ${Math.ceil(length - 1e-9)} in long`;
  return box ?? `of ${Math.ceil((volume ?? 0) - 1e-9)} cu in`;
};
