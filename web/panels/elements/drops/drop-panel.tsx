import { useMemo } from 'react';
import { MOUNTS } from '../../../../routing/site/schema/vocabulary.ts';
import { placeDrop } from '../../../document/edits/moving/move.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, LengthField, NumberField, PlaceFields } from '../../../parts/fields.tsx';
import { MaybeLength } from '../../../parts/maybe-fields.tsx';
import { AsBuiltFields } from '../../as-built/as-built-fields.tsx';
import { OwnFindings } from '../../facts/facts.tsx';
import { CutHere } from '../remarks/cut-here.tsx';
import { useChange, useElement } from '../use-element.ts';
import { ChargerMargins } from './charger-margins.tsx';
import { ChargerCircuit, ChargerFields } from './charger-panel.tsx';
import { DropPull } from './drop-pull.tsx';
import { GroundWays } from './ground-ways.tsx';
import { HangCharger } from './hang-charger.tsx';
import { ReachFields } from './reach-fields.tsx';
import { useMount } from './use-mount.ts';

/** A drop: its chargers' margins, where it hangs, and what feeds it. */
export function DropPanel({ id }: { readonly id: string }) {
  const drop = useElement('drops', id);
  const change = useChange('drops', id);
  const document = useDocumentStore();
  const mountAs = useMount();
  const chargers = useDocument((state) => state.site.chargers);
  const own = useMemo(() => chargers.filter((charger) => charger.drop === id), [chargers, id]);
  if (!drop) return null;
  const { box, retractor, cord, mount, restHeight } = drop;
  return (
    <>
      {own.map((charger) => (
        <div key={charger.id}>
          {own.length > 1 && <h3>{charger.id}</h3>}
          <ChargerMargins charger={charger.id} />
        </div>
      ))}
      {own.length === 0 && <HangCharger drop={id} />}
      <FieldGroup name="Where it hangs">
        <PlaceFields
          label="box"
          value={box}
          onChange={(next) => {
            const { file, apply } = document.getState();
            apply(placeDrop(file, id, next));
          }}
        />
        {retractor ? (
          <PlaceFields label="retractor" value={retractor} onChange={(next) => change({ retractor: next })} />
        ) : (
          <button type="button" className="plain" onClick={() => change({ retractor: box })}>
            Add a retractor
          </button>
        )}
        <LengthField label="cord" value={cord} least={0.1} onChange={(next) => change({ cord: next })} />
        {retractor && (
          <button type="button" className="plain" onClick={() => change({ retractor: undefined })}>
            Take the retractor away
          </button>
        )}
        <MaybeLength
          label="connector rests at"
          none="not given"
          value={restHeight ?? null}
          least={0}
          onChange={(next) => change({ restHeight: next ?? undefined })}
        />
        <NumberField
          label="made for cords"
          unit=""
          whole
          least={1}
          value={drop.holds ?? 1}
          onChange={(holds) => change({ holds: holds === 1 ? undefined : holds })}
        />
        <ChoiceField
          label="mount"
          value={mount ?? 'overhead'}
          choices={MOUNTS}
          onChange={(next) => mountAs([id], next)}
        />
      </FieldGroup>
      {(mount ?? 'overhead') === 'overhead' &&
        own.map((charger) => <DropPull key={charger.id} drop={drop} charger={charger} />)}
      <CutHere list="drops" id={id} />
      <GroundWays drops={[id]} />
      <AsBuiltFields drop={drop} />
      <ReachFields />
      {own.map((charger) => (
        <div key={charger.id}>
          <ChargerFields id={charger.id} />
          <ChargerCircuit charger={charger.id} />
        </div>
      ))}
      <OwnFindings id={id} />
    </>
  );
}
