import { useEffect, useRef, useState } from 'react';
import type { Drop } from '../../routing/site/site.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePage } from '../page-state/page-store.ts';
import {
  CheckedFields,
  MeasuredPlaces,
  NoteField,
  RecordActs,
  standingWords,
} from '../panels/as-built/as-built-fields.tsx';
import { AsBuiltResults } from '../panels/as-built/results.tsx';
import { useAsBuilt } from '../panels/as-built/use-as-built.ts';
import { Circuit } from '../panels/elements/charger-panel.tsx';
import { OwnFindings } from '../panels/facts/facts.tsx';
import { useBuildRows } from './build-list.tsx';
import { nextRow } from './build-rows.ts';

/** What is opened from the foot of the card. */
const PARTS = { measured: 'Measure', note: 'Note', initials: 'Initials' } as const;
type Part = keyof typeof PARTS | 'more';

/** One drop in the hand of the person who hangs it: a card over the list, with its acts at the thumb. */
export function BuildCard({ drop }: { readonly drop: Drop }) {
  const document = useDocumentStore();
  const units = useDocument((state) => state.site.units);
  const filter = usePage((state) => state.buildFilter);
  const { rows, go } = useBuildRows();
  const record = useAsBuilt(drop);
  const [open, setOpen] = useState<Part | null>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const row = rows.find(({ id }) => id === drop.id);
  // Whoever found one by its name goes on down the list.
  const next = nextRow(rows, { ...filter, find: '' }, drop.id);
  const { box, retractor } = drop;
  // What is opened is read from its top.
  useEffect(() => {
    if (open && scroll.current) scroll.current.scrollTop = 0;
  }, [open]);
  return (
    <section className="build-card" aria-label={`Drop ${drop.id}`}>
      <header>
        <h2>{drop.id}</h2>
        <span>{standingWords(record, units)}</span>
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
          </>
        )}
        {open === 'measured' && (
          <div className="fields as-built">
            <MeasuredPlaces drop={drop} />
            <AsBuiltResults drop={drop} />
          </div>
        )}
        {open === 'note' && (
          <div className="fields as-built">
            <NoteField drop={drop} />
          </div>
        )}
        {open === 'initials' && (
          <div className="fields as-built">
            <CheckedFields drop={drop} />
          </div>
        )}
        {open === 'more' && <More drop={drop} />}
      </div>
      <div className="build-acts">
        <button
          type="button"
          onClick={() => record.measured({ box, ...(retractor && { retractor }) })}
          disabled={record.found?.box !== undefined && record.away === 0}
        >
          As drawn
        </button>
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
        <button type="button" className="main-act" disabled={!next} onClick={() => next && go(next.id)}>
          {next ? `Next ${next.id}` : 'None left'}
        </button>
      </div>
    </section>
  );
}

function More({ drop }: { readonly drop: Drop }) {
  const chargers = useDocument((state) => state.site.chargers);
  const own = chargers.filter((charger) => charger.drop === drop.id);
  return (
    <>
      {own.map(({ id }) => (
        <section key={id} aria-label={`Charger ${id} as drawn`}>
          <h3>{id}</h3>
          <Circuit charger={id} />
        </section>
      ))}
      <OwnFindings id={drop.id} />
      <div className="fields">
        <RecordActs drop={drop} />
      </div>
    </>
  );
}
