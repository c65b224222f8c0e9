import { useDocument } from '../document/use-document.ts';
import { nearestInch } from '../words/lengths.ts';
import { Fact, Facts, Link, OwnFindings } from './facts.tsx';
import { FeederWays } from './feeder-ways.tsx';
import { LengthField, NumberField, PlaceFields } from './fields.tsx';
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
      <section className="fields" aria-label="Column">
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
        <LengthField
          label="height"
          value={column.height ?? Number.NaN}
          least={0.1}
          onChange={(height) => change({ height })}
        />
      </section>
      <OwnFindings id={id} />
    </>
  );
}

export function MemberPanel({ id }: PanelProps) {
  const member = useElement('members', id);
  const change = useChange('members', id);
  if (!member) return null;
  return (
    <section className="fields" aria-label="Member">
      <PlaceFields label="from" value={member.from} onChange={(from) => change({ from })} />
      <PlaceFields label="to" value={member.to} onChange={(to) => change({ to })} />
    </section>
  );
}

export function PullpointPanel({ id }: PanelProps) {
  const pullpoint = useElement('pullpoints', id);
  const change = useChange('pullpoints', id);
  const conduits = useDocument((state) => state.plan.conduits);
  const units = useDocument((state) => state.site.units);
  if (!pullpoint) return null;
  const own = conduits.filter(({ from, to }) => from === id || to === id);
  return (
    <>
      <Facts>
        {own.map((conduit) => (
          <Fact key={conduit.id} name={conduit.to === id ? `from ${conduit.from}` : `to ${conduit.to}`}>
            {conduit.tradeSize ? `${conduit.tradeSize}" ` : ''}
            {conduit.method}, {nearestInch(conduit.length, units)}
          </Fact>
        ))}
      </Facts>
      <section className="fields" aria-label="Pull point">
        <PlaceFields label="place" value={pullpoint.at} onChange={(at) => change({ at })} />
      </section>
      <OwnFindings id={id} />
    </>
  );
}

export function AreaPanel({ id, list }: PanelProps & { readonly list: 'keepouts' | 'aisles' }) {
  const area = useElement(list, id);
  const units = useDocument((state) => state.site.units);
  if (!area) return null;
  return (
    <>
      <Facts>
        {'blocks' in area && (
          <>
            <Fact name="keeps out">{area.blocks.join(', ') || 'nothing'}</Fact>
            <Fact name="from">{area.from === undefined ? 'grade' : nearestInch(area.from, units)}</Fact>
            <Fact name="to">{area.to === undefined ? 'the sky' : nearestInch(area.to, units)}</Fact>
          </>
        )}
        <Fact name="corners">{area.outline.length}</Fact>
      </Facts>
      <OwnFindings id={id} />
    </>
  );
}

export function FeederPanel({ id }: PanelProps) {
  const feeder = useElement('feeders', id);
  const supply = useDocument((state) => state.plan.supply.feeders.find((each) => each.id === id));
  const units = useDocument((state) => state.site.units);
  if (!feeder) return null;
  const { sets, size, metal, insulation } = feeder.conductor;
  return (
    <>
      <Facts>
        <Fact name="from">
          <Link id={feeder.from} />
        </Fact>
        <Fact name="to">
          <Link id={feeder.to} />
        </Fact>
        <Fact name="conductors">
          {sets > 1 ? `${sets} sets of ` : ''}#{size} {metal} {insulation}
        </Fact>
        <Fact name="breaker">{feeder.breakerAmps} A</Fact>
        <Fact name="stands">{feeder.existing ? 'already' : 'to be installed'}</Fact>
        {supply && (
          <>
            <Fact name="length">{nearestInch(supply.length, units)}</Fact>
            <Fact name="drop">{supply.dropPercent.toFixed(2)} %</Fact>
            <Fact name="loaded">{supply.percentLoaded.toFixed(0)} %</Fact>
          </>
        )}
      </Facts>
      {feeder.existing === true && <FeederWays id={id} />}
      <OwnFindings id={id} />
    </>
  );
}

export function LoadPanel({ id }: PanelProps) {
  const load = useElement('loads', id);
  if (!load) return null;
  return (
    <Facts>
      <Fact name="load">{load.name}</Fact>
      <Fact name="on">
        <Link id={load.from} />
      </Fact>
      <Fact name="draws">
        {(load.va / 1000).toFixed(2)} kVA at {load.volts} V{load.continuous ? ', continuous' : ''}
      </Fact>
    </Facts>
  );
}
