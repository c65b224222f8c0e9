import { useEffect, useRef, useState } from 'react';
import { cardLink } from '../../../calc/field/cards/card-link.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePage, usePageStore } from '../../page-state/page-store.ts';
import { asBuiltWords, CheckedFields, MeasuredPlaces, NoteField } from '../../panels/as-built/as-built-fields.tsx';
import { AsBuiltResults } from '../../panels/as-built/results.tsx';
import { useAsBuilt } from '../../panels/as-built/use-as-built.ts';
import { ChargerCircuit } from '../../panels/elements/drops/charger-panel.tsx';
import { OwnFindings } from '../../panels/facts/facts.tsx';
import { nearestOpen } from '../../words/nearest-open.ts';
import { useBuildRows } from './build-list.tsx';
import { nextInRow, nextRow } from './build-rows.ts';
import { ChecklistFacts } from './checklist-facts.tsx';
import { DeviationFacts } from './deviation-facts.tsx';
import { PhotoFacts } from './photo-facts.tsx';
import { PullCardButton } from './pull-card-button.tsx';
import { RoomFacts } from './room-facts.tsx';
import { SetOutFacts, useSetOut } from './set-out-facts.tsx';
import { StepsFacts } from './steps-facts.tsx';
import { TestFacts } from './test-facts.tsx';

/** What is opened from the foot of the card. */
const PARTS = { setOut: 'Set out', measured: 'Measure', test: 'Test', note: 'Note', photo: 'Photo' } as const;
type Part = keyof typeof PARTS | 'more';

/** One drop in the hand of the person who hangs it: a card over the list, with its acts at the thumb. */
export function BuildCard({ drop }: { readonly drop: Drop }) {
  const document = useDocumentStore();
  const units = useDocument((state) => state.site.units);
  const { rows } = useBuildRows();
  const record = useAsBuilt(drop);
  const [open, setOpen] = useState<Part | null>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const row = rows.find(({ id }) => id === drop.id);
  // What is opened is read from its top.
  useEffect(() => {
    if (open && scroll.current) scroll.current.scrollTop = 0;
  }, [open]);
  return (
    <section className={open ? 'build-card build-card-open' : 'build-card'} aria-label={`Drop ${drop.id}`}>
      <header>
        <h2>{drop.id}</h2>
        <span role="status">{asBuiltWords(record, units)}</span>
        <button
          type="button"
          className="plain"
          aria-expanded={open === 'more'}
          onClick={() => setOpen(open === 'more' ? null : 'more')}
        >
          More
        </button>
        <button type="button" className="plain" onClick={() => document.getState().select([])}>
          Close
        </button>
      </header>
      <div className="build-card-scroll" ref={scroll}>
        {open === null && (
          <>
            <p className="build-place">{row?.place}</p>
            <AsBuiltResults drop={drop} />
            <DeviationFacts drop={drop} />
          </>
        )}
        {open === 'setOut' && <SetOut drop={drop} />}
        {open === 'measured' && (
          <div className="fields as-built">
            <MeasuredPlaces drop={drop} />
            <AsBuiltResults drop={drop} />
            <DeviationFacts drop={drop} />
          </div>
        )}
        {open === 'note' && (
          <div className="fields as-built">
            <NoteField drop={drop} />
            <CheckedFields drop={drop} />
          </div>
        )}
        {open === 'test' && <Tests drop={drop} />}
        {open === 'photo' && <PhotoFacts id={drop.id} />}
        {open === 'more' && <More drop={drop} circuits={row?.circuits ?? ''} />}
      </div>
      <Acts drop={drop} open={open} setOpen={setOpen} record={record} />
    </section>
  );
}

interface ActsProps {
  readonly drop: Drop;
  readonly open: Part | null;
  readonly setOpen: (part: Part | null) => void;
  readonly record: ReturnType<typeof useAsBuilt>;
}

/** What is done to a drop, and the ways on from it; the main one in the corner under the thumb. */
function Acts({ drop, open, setOpen, record }: ActsProps) {
  const filter = usePage((state) => state.buildFilter);
  const { rows, go } = useBuildRows();
  const { rows: tapes } = useSetOut();
  const { box, retractor } = drop;
  // Whoever found one by its name goes on down the list.
  const next = nextRow(rows, { ...filter, find: '' }, drop.id);
  const site = useDocument((state) => state.site);
  const near = nearestOpen(site, drop.id);
  const along = nextInRow(tapes, drop.id);
  return (
    <div className="build-acts">
      {(Object.keys(PARTS) as (keyof typeof PARTS)[]).map((part) => (
        <button
          key={part}
          type="button"
          aria-expanded={open === part}
          onClick={() => setOpen(open === part ? null : part)}
        >
          {PARTS[part]}
        </button>
      ))}
      <Pull drop={drop} />
      <button
        type="button"
        onClick={() => record.measured({ box, ...(retractor && { retractor }) })}
        disabled={record.found?.box !== undefined && record.away === 0}
      >
        As drawn
      </button>
      <button
        type="button"
        disabled={!near}
        aria-label={near ? `Near ${near.id}: the nearest not done` : 'All done'}
        onClick={() => near && go(near.id)}
      >
        {near ? `Near ${near.id}` : 'All done'}
      </button>
      <button
        type="button"
        disabled={!along}
        aria-label={along ? `Row ${along}: the next in the row` : 'No row'}
        onClick={() => along && go(along)}
      >
        {along ? `Row ${along}` : 'No row'}
      </button>
      <button type="button" className="main-act" disabled={!next} onClick={() => next && go(next.id)}>
        {next ? `Next ${next.id}` : 'None left'}
      </button>
    </div>
  );
}

/** The pull card of the drop's circuit; of several, of the first: those of the others are under More. */
function Pull({ drop }: { readonly drop: Drop }) {
  const page = usePageStore();
  const site = useDocument((state) => state.name);
  const charger = useDocument((state) => state.site.chargers.find((each) => each.drop === drop.id)?.id);
  return (
    <button
      type="button"
      disabled={charger === undefined}
      aria-label="Pull card"
      onClick={() => charger && page.setState({ card: { link: cardLink('', { kind: 'circuit', id: charger, site }) } })}
    >
      Pull
    </button>
  );
}

function Tests({ drop }: { readonly drop: Drop }) {
  const chargers = useDocument((state) => state.site.chargers);
  const own = chargers.filter((charger) => charger.drop === drop.id);
  if (own.length === 0) return <p>No charger hangs here: there is nothing to test.</p>;
  return own.map(({ id }) => (
    <div key={id}>
      <TestFacts of={id} />
      <StepsFacts id={id} steps={['tested']} />
    </div>
  ));
}

function SetOut({ drop: { id, retractor } }: { readonly drop: Drop }) {
  return (
    <>
      <SetOutFacts id={id} />
      <RoomFacts
        points={[
          { list: 'drops', id, part: 'box', name: 'the box' },
          ...(retractor ? ([{ list: 'drops', id, part: 'retractor', name: 'the retractor' }] as const) : []),
        ]}
      />
    </>
  );
}

function More({ drop, circuits }: { readonly drop: Drop; readonly circuits: string }) {
  const chargers = useDocument((state) => state.site.chargers);
  const own = chargers.filter((charger) => charger.drop === drop.id);
  const { found, forget } = useAsBuilt(drop);
  return (
    <>
      {circuits && <p>Circuit {circuits}</p>}
      <StepsFacts id={drop.id} steps={['set']} />
      <ChecklistFacts ids={[drop.id, ...own.map(({ id }) => id)]} />
      {own.map(({ id }) => (
        <section key={id} aria-label={`Charger ${id} as drawn`}>
          <StepsFacts id={id} steps={['pulled', 'terminated', 'tested']} />
          <PullCardButton kind="circuit" id={id} />
          <ChargerCircuit charger={id} />
        </section>
      ))}
      <OwnFindings id={drop.id} />
      {found && (
        <button type="button" className="plain" onClick={forget}>
          Forget the record
        </button>
      )}
    </>
  );
}
