import { useState } from 'react';
import { type Outlook, outlookWords } from '../../../calc/propose/outlook.ts';
import { FULL_RATE, type LoadWish } from '../../../calc/propose/panels/charger-amps.ts';
import { mostEnergy } from '../../../calc/propose/panels/read-load.ts';
import type { ProposalPart } from '../../../calc/propose/part.ts';
import { measureWords } from '../../../calc/propose/part-words.ts';
import type { What } from '../../../calc/propose/propose.ts';
import { METALS, type Metal } from '../../../routing/site/schema/vocabulary.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, NumberField } from '../../parts/fields.tsx';
import { askProposal, dismissProposal, useProposals } from '../../proposal/proposal-store.ts';
import { priceWords } from '../../words/dollars.ts';
import { Link } from '../facts/facts.tsx';
import { ProposalProgress } from './proposal-progress.tsx';

const WHAT: Readonly<Record<What, string>> = {
  all: 'drops, panels and raceways',
  drops: 'drops with their chargers',
  equipment: 'panels',
  raceways: 'raceways',
};

/** Has what is missing proposed, tells how far that is, and what was drawn in. */
export function ProposeForm() {
  const document = useDocumentStore();
  const prices = usePrices((state) => state.list);
  const metal = useDocument((state) => state.site.rules.metal);
  const [what, setWhat] = useState<What>('all');
  const [cordsADrop, setCords] = useState(1);
  const [load, setLoad] = useState<LoadWish>(FULL_RATE);
  const [feederMetal, setMetal] = useState<Metal>(metal);
  const [minutes, setMinutes] = useState(10);
  const doing = useProposals((state) => state.doing);
  const parts = useProposals((state) => state.parts);
  const outlook = useProposals((state) => state.outlook);
  const fault = useProposals((state) => state.fault);
  return (
    <section className="fields" aria-label="Propose">
      <ChoiceField
        label="propose"
        value={what}
        choices={Object.keys(WHAT) as What[]}
        words={(each) => WHAT[each]}
        onChange={setWhat}
      />
      {(what === 'all' || what === 'drops') && (
        <NumberField label="cords a drop" unit="" whole least={1} most={6} value={cordsADrop} onChange={setCords} />
      )}
      {(what === 'all' || what === 'equipment') && <LoadFields load={load} whole={what === 'all'} onChange={setLoad} />}
      {(what === 'all' || what === 'equipment') && (
        <ChoiceField
          label="new feeders"
          value={feederMetal}
          choices={METALS}
          words={(each) => `of ${each}`}
          onChange={setMetal}
        />
      )}
      {doing === null && (
        <NumberField label="at most" unit="min" least={0.1} most={240} value={minutes} onChange={setMinutes} />
      )}
      {doing ? (
        <ProposalProgress doing={doing} />
      ) : (
        <p>
          <button
            type="button"
            className="small-act"
            onClick={() =>
              askProposal(
                document,
                {
                  what,
                  cordsADrop,
                  prices,
                  feederMetal,
                  load: load.kind === 'day' && what !== 'all' ? FULL_RATE : load,
                },
                60 * minutes,
              )
            }
          >
            Propose {WHAT[what]}
          </button>
        </p>
      )}
      {fault && <p role="alert">{fault}</p>}
      {parts.length > 0 && <Drawn parts={parts} outlook={outlook} />}
      <p className="quiet">Nothing that is drawn is moved, and undo takes it all away again.</p>
    </section>
  );
}

type Asked = Exclude<LoadWish['kind'], 'each'>;

const LOAD: Readonly<Record<Asked, string>> = {
  full: 'at full rate, all at once',
  energy: 'managed: energy for each car',
  ceiling: 'managed: a ceiling for the lot',
  day: 'managed: what the charging days need',
};

/** What each way of load management begins with. */
const BEGIN: Readonly<Record<Asked, LoadWish>> = {
  full: FULL_RATE,
  energy: { kind: 'energy', kwh: 20, hours: 8 },
  ceiling: { kind: 'ceiling', amps: 200 },
  day: { kind: 'day' },
};

/** How the chargers of new panels are to run. */
function LoadFields({
  load,
  whole,
  onChange,
}: {
  readonly load: LoadWish;
  readonly whole: boolean;
  readonly onChange: (load: LoadWish) => void;
}) {
  const hasDay = useDocument((state) => (state.file.days ?? []).length > 0);
  const kinds = (Object.keys(LOAD) as Asked[]).filter((kind) => kind !== 'day' || (hasDay && whole));
  const kind = kinds.find((each) => each === load.kind) ?? 'full';
  return (
    <>
      <ChoiceField
        label="chargers run"
        value={kind}
        choices={kinds}
        words={(each) => LOAD[each]}
        onChange={(each) => onChange(BEGIN[each])}
      />
      {load.kind === 'energy' && (
        <>
          <NumberField
            label="energy a car"
            unit="kWh"
            least={0.1}
            most={mostEnergy(load.hours)}
            value={load.kwh}
            onChange={(kwh) => onChange({ ...load, kwh })}
          />
          <NumberField
            label="in a stay of"
            unit="h"
            least={0.1}
            most={168}
            value={load.hours}
            onChange={(hours) => onChange({ ...load, hours, kwh: Math.min(load.kwh, mostEnergy(hours)) })}
          />
        </>
      )}
      {load.kind === 'ceiling' && (
        <NumberField
          label="ceiling"
          unit="A"
          least={1}
          most={6000}
          value={load.amps}
          onChange={(amps) => onChange({ ...load, amps })}
        />
      )}
    </>
  );
}

/** So many are named before the rest are counted. */
const MOST_NAMED = 6;

interface DrawnProps {
  readonly parts: readonly ProposalPart[];
  readonly outlook: Outlook | null;
}

function Drawn({ parts, outlook }: DrawnProps) {
  const list = usePrices((state) => state.list);
  return (
    <div data-testid="proposed">
      {parts.map((part) => (
        <div key={part.what}>
          {part.says.map((one) => (
            <p key={one}>{one}</p>
          ))}
          {part.measure && <p className="quiet">{measureWords(part)}.</p>}
          {part.without.slice(0, MOST_NAMED).map(({ id, says }) => (
            <p key={id}>
              <Link id={id} />: {says}
            </p>
          ))}
          {part.without.length > MOST_NAMED && <p>And {part.without.length - MOST_NAMED} more without.</p>}
        </div>
      ))}
      {outlook !== null &&
        outlookWords(outlook, (amount) => priceWords(amount, list)).map((one) => <p key={one}>{one}</p>)}
      <button type="button" className="plain" onClick={dismissProposal}>
        Put this away
      </button>
    </div>
  );
}
