import { METHODS, PLACES, SURFACES } from '../../../routing/site/schema/vocabulary.ts';
import { counted } from '../../../routing/words/counted.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField } from '../../parts/fields.tsx';
import { MaybeLength, MaybeNumber } from '../../parts/maybe-fields.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { Fact, Facts, Links, OwnFindings } from '../facts/facts.tsx';
import { CutHere } from './remarks/cut-here.tsx';
import { useChange, useElement } from './use-element.ts';
import { Vertices } from './vertices.tsx';

/** A raceway: the circuits that lie in it, its conduits, and its vertices. */
export function RacewayPanel({ id }: { readonly id: string }) {
  const raceway = useElement('raceways', id);
  const change = useChange('raceways', id);
  const plan = useDocument((state) => state.plan);
  const units = useDocument((state) => state.site.units);
  if (!raceway) return null;
  const inside = plan.runs.filter(({ raceways }) => raceways.includes(id)).map(({ charger }) => charger);
  const conduits = plan.conduits.filter(({ raceways }) => raceways.includes(id));
  return (
    <>
      <Facts>
        <Fact name="carries">
          <Links ids={inside} />
        </Fact>
        {conduits.slice(0, 8).map((conduit) => (
          <Fact key={conduit.id} name={`${conduit.from} to ${conduit.to}`}>
            {conduit.tradeSize ? `${conduit.tradeSize}" ` : ''}
            {conduit.method}, {nearestInch(conduit.length, units)}, {counted(conduit.circuits.length, 'circuit')}
          </Fact>
        ))}
        {conduits.length > 8 && <Fact name="and">{conduits.length - 8} more conduits</Fact>}
      </Facts>
      <FieldGroup name="Raceway">
        <ChoiceField
          label="method"
          value={raceway.method}
          choices={METHODS}
          onChange={(method) => change({ method })}
        />
        <ChoiceField label="place" value={raceway.place} choices={PLACES} onChange={(place) => change({ place })} />
        {raceway.place === 'underground' && (
          <ChoiceField
            label="under"
            value={raceway.surface ?? 'asphalt'}
            choices={SURFACES}
            onChange={(surface) => change({ surface })}
          />
        )}
        <MaybeNumber
          label="ambient"
          unit="°C"
          none="by its place"
          least={-60}
          value={raceway.ambientC ?? null}
          onChange={(ambientC) => change({ ambientC: ambientC ?? undefined })}
        />
        <MaybeLength
          label="in sun, above roof"
          none="no"
          value={raceway.aboveRoof ?? null}
          least={0}
          onChange={(aboveRoof) => change({ aboveRoof: aboveRoof ?? undefined })}
        />
        <Vertices path={raceway.path} onChange={(path) => change({ path })} />
      </FieldGroup>
      <CutHere list="raceways" id={id} />
      <OwnFindings id={id} />
    </>
  );
}
