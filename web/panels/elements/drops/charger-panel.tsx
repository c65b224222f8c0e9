import type { SizedCord } from '../../../../calc/circuits/cord.ts';
import { circuitOf } from '../../../../calc/plan/circuits.ts';
import type { Circuit, Conduit } from '../../../../calc/plan-file/branches.ts';
import { cordOf, whyCircuit, whyConduit, whyCord } from '../../../../calc/why/why.ts';
import { whyBox } from '../../../../calc/why/why-supply.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { conduitOf, runOf } from '../../../document/find/finders.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { ChoiceField, NumberField, TextField } from '../../../parts/fields.tsx';
import { MaybeLength, MaybeNumber } from '../../../parts/maybe-fields.tsx';
import { nearestInch } from '../../../words/lengths.ts';
import { PILOT_WORDS } from '../../../words/pilot-words.ts';
import { printStalls, readStalls } from '../../../words/stall-names.ts';
import { Fact, Facts, Link, Links, OwnFindings } from '../../facts/facts.tsx';
import { Why } from '../../facts/why.tsx';
import { useChange, useElement } from '../use-element.ts';
import { ChargerMargins } from './charger-margins.tsx';

export function ChargerPanel({ id }: { readonly id: string }) {
  const charger = useElement('chargers', id);
  if (!charger) return null;
  return (
    <>
      <ChargerMargins charger={id} />
      <p>
        Hangs at <Link id={charger.drop} />
      </p>
      <ChargerFields id={id} />
      <ChargerCircuit charger={id} />
      <OwnFindings id={id} />
    </>
  );
}

/** What the file says of a charger. */
export function ChargerFields({ id }: { readonly id: string }) {
  const charger = useElement('chargers', id);
  const change = useChange('chargers', id);
  const equipment = useDocument((state) => state.site.equipment);
  const stalls = useDocument((state) => state.site.stalls);
  const drops = useDocument((state) => state.site.drops);
  if (!charger) return null;
  return (
    <FieldGroup name="Charger" heading={`Charger ${id}`}>
      <ChoiceField
        label="fed from"
        value={charger.from}
        choices={equipment.map((each) => each.id)}
        onChange={(from) => change({ from })}
      />
      <TextField
        label="hangs at drop"
        value={charger.drop}
        check={(text) => (drops.some((drop) => drop.id === text) ? null : `no drop ${text}`)}
        onChange={(drop) => change({ drop })}
      />
      <TextField
        label="serves stalls"
        value={printStalls(charger.stalls, stalls)}
        check={(text) => {
          const read = readStalls(text, stalls);
          return read.ok ? null : read.says;
        }}
        onChange={(text) => {
          const read = readStalls(text, stalls);
          if (read.ok) change({ stalls: [...read.ids] });
        }}
      />
      <NumberField label="rated" unit="A" value={charger.amps} onChange={(amps) => change({ amps })} />
      <NumberField label="voltage" unit="V" value={charger.volts} onChange={(volts) => change({ volts })} />
      <ChoiceField
        label="phases"
        value={String(charger.phases)}
        choices={['1', '3']}
        words={(choice) => (choice === '1' ? 'single, line to line' : 'three')}
        onChange={(phases) => change({ phases: phases === '3' ? 3 : 1 })}
      />
      <ChoiceField
        label="pilot"
        value={charger.pilot ? 'yes' : 'no'}
        choices={['yes', 'no']}
        words={(each) => (each === 'yes' ? PILOT_WORDS.yes : PILOT_WORDS.no)}
        onChange={(each) => change({ pilot: each === 'yes' ? true : undefined })}
      />
      <MaybeNumber
        label="least it gives"
        unit="A"
        none="6 A"
        value={charger.minAmps ?? null}
        onChange={(minAmps) => change({ minAmps: minAmps ?? undefined })}
      />
      <MaybeLength
        label="own disconnect"
        none="not given"
        least={0}
        value={charger.disconnect ?? null}
        onChange={(disconnect) => change({ disconnect: disconnect ?? undefined })}
      />
      <MaybeLength
        label="branch limit"
        none="as the rules"
        least={0.1}
        value={charger.branchLimit ?? null}
        onChange={(branchLimit) => change({ branchLimit: branchLimit ?? undefined })}
      />
      <MaybeNumber
        label="branch drop limit"
        unit="%"
        none="as the rules"
        least={0.01}
        value={charger.branchDrop ?? null}
        onChange={(branchDrop) => change({ branchDrop: branchDrop ?? undefined })}
      />
    </FieldGroup>
  );
}

/** What the plan makes of a charger: its run, breaker, conductors, and the conduits with the circuits beside it. */
export function ChargerCircuit({ charger }: { readonly charger: string }) {
  const site = useDocument((state) => state.site);
  const { units } = site;
  const circuit = useDocument((state) => circuitOf(state.plan, charger));
  const run = useDocument((state) => runOf(state.plan.runs, charger));
  const conduits = useDocument((state) => state.plan.conduits);
  if (!run || run.length === null) return <p className="quiet">No run, so no circuit.</p>;
  const own = circuit?.conduits.flatMap((id) => conduitOf(conduits, id) ?? []) ?? [];
  return (
    <section aria-label={`Circuit of ${charger}`}>
      <Facts>
        <Fact name="run">
          {nearestInch(run.length, units)} from <Link id={run.from} />, {counted(run.bends, 'bend')}
        </Fact>
        <Fact name="conductor length">{nearestInch(run.conductorLength ?? Number.NaN, units)} a line</Fact>
        {circuit && <CircuitFacts circuit={circuit} />}
        <Fact name="cord">{cordWords(cordOf(site, charger))}</Fact>
      </Facts>
      {circuit && (
        <>
          <Why
            ask={`Why #${circuit.conductor.size} and ${circuit.breakerAmps} A?`}
            steps={() => whyCircuit(site, charger)}
          />
          <Why ask={`Why ${circuit.voltsAtBox.toFixed(1)} V at the box?`} steps={() => whyBox(site, charger)} />
          <Why ask="Why this cord?" steps={() => whyCord(site, charger)} />
        </>
      )}
      {own.length > 0 && <ConduitList conduits={own} charger={charger} />}
    </section>
  );
}

/** Its listing rules over the tables. */
const cordWords = (found: SizedCord | null): string =>
  found === null
    ? 'none of the tables carries its amperes'
    : `#${found.size} or larger by the tables, ${found.ampacity.toFixed(0)} A; drops ${found.dropVolts.toFixed(1)} V of itself, ${found.dropPercent.toFixed(2)}%`;

function CircuitFacts({ circuit }: { readonly circuit: Circuit }) {
  const { breakerAmps, phases, conductor, grounding, pilot, factors, ampacity, voltsAtBox } = circuit;
  const { totalDropPercent, worstDropPercent } = circuit;
  const poles = phases.length;
  return (
    <>
      <Fact name="breaker">
        {breakerAmps} A, {poles} pole, lines {[...phases].join(' ')}
      </Fact>
      <Fact name="conductors">
        {poles} #{conductor.size} {conductor.metal} {conductor.insulation}, #{grounding.size} ground
        {pilot ? ', pilot' : ''}
      </Fact>
      <Fact name="ampacity">
        {ampacity.toFixed(1)} A with {factors.ambient.toFixed(2)} for heat, {factors.bundling.toFixed(2)} for bundling
      </Fact>
      <Fact name="at the box">
        {voltsAtBox.toFixed(1)} V, {totalDropPercent.toFixed(2)}% below nominal in all
        {worstDropPercent > totalDropPercent + 0.005
          ? `; ${worstDropPercent.toFixed(2)}% where it alone runs at its rating under the shared limit`
          : ''}
      </Fact>
    </>
  );
}

function ConduitList({ conduits, charger }: { readonly conduits: readonly Conduit[]; readonly charger: string }) {
  const site = useDocument((state) => state.site);
  const { units } = site;
  return (
    <ul className="conduits" aria-label="Conduits on the way">
      {conduits.map(({ id, method, tradeSize, length, fillPercent, fillLimit, circuits, from, to }) => (
        <li key={id}>
          <b>{tradeSize ? `${tradeSize}" ${method}` : method}</b> {nearestInch(length, units)}, {from} to {to}
          <span className="quiet">
            {tradeSize ? `, ${fillPercent.toFixed(0)} of ${fillLimit}% full` : ''}
            {circuits.length > 1 && ', with '}
          </span>
          {circuits.length > 1 && <Links ids={circuits.filter((each) => each !== charger)} />}
          {tradeSize && <Why ask={`Why ${tradeSize}"?`} steps={() => whyConduit(site, id)} />}
        </li>
      ))}
    </ul>
  );
}
