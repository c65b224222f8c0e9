import { useState } from 'react';
import { findingCounts } from '../../../calc/checks/standing.ts';
import { leastMargin, MARGIN_KINDS, type MarginKind, marginsOf } from '../../../calc/plan/margins.ts';
import { servedStalls } from '../../../calc/plan/served.ts';
import { SUMMED_LENGTHS, type SummedLength, summedLength } from '../../../calc/takeoff/totals.ts';
import { printTotal } from '../../../routing/site/numbers/feet-inches.ts';
import { chooseTool } from '../../board/draw/choose-tool.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import { useView, useViewStore } from '../../board/view-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { useTakeoff } from '../../document/use-takeoff.ts';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePageStore } from '../../page-state/page-store.ts';
import { whenAsked } from '../../page-state/when-asked.tsx';
import { type TitleCell, TitleCells } from '../../parts/title-cells.tsx';
import { dropRefOf } from '../../words/refs.ts';
import { FindingList } from '../facts/finding-list.tsx';
import { MarginBarRow } from '../facts/margin-bar.tsx';
import { KindSwitches } from '../kind-switches.tsx';
import { ProposeSection } from './propose-section.tsx';
import { SelectLot } from './select-lot.tsx';
import { WhyNotSound } from './standing.tsx';

const AccessibleSection = whenAsked(async () => (await import('./accessible-section.tsx')).AccessibleSection);
const BuildCells = whenAsked(async () => (await import('./build-cells.tsx')).BuildCells);
const CheckList = whenAsked(async () => (await import('./check-list.tsx')).CheckList);
const UnderlaySection = whenAsked(async () => (await import('../../underlay/underlay-section.tsx')).UnderlaySection);
const PricePanel = whenAsked(async () => (await import('./price-panel.tsx')).PricePanel);
const Quantities = whenAsked(async () => (await import('./quantities.tsx')).QuantitiesInShort);
const SiteForm = whenAsked(async () => (await import('../site/site-form.tsx')).SiteForm);

/** The ledger with nothing selected: how the lot stands. */
export function LotPanel() {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const takeoff = useTakeoff();
  const station = useDocument((state) => state.station);
  const [open, setOpen] = useState(false);
  const opens = { open, toggle: () => setOpen(!open) };
  const served = site.stalls.filter(({ id }) => servedStalls(plan, site.rules).has(id)).length;
  const { fail: fails, warn: warns } = findingCounts(plan);
  const summed = (length: SummedLength) => ({
    label: length.name,
    value: takeoff === undefined ? '…' : printTotal(summedLength(takeoff, length), site.units),
    says: length.says,
  });
  const cells: readonly TitleCell[] = [
    { label: 'stalls served', value: `${served} of ${site.stalls.length}` },
    { label: 'chargers', value: String(site.chargers.length) },
    { label: 'fails', value: String(fails), state: fails > 0 ? 'fail' : 'pass', opens },
    { label: 'to check', value: String(warns), state: warns > 0 ? 'warn' : 'pass', opens },
  ];
  return (
    <div className="panel" data-testid="lot-panel">
      <h2>The lot</h2>
      {station === 'build' ? (
        <BuildCells cells={cells} />
      ) : (
        <TitleCells cells={[...cells, summed(SUMMED_LENGTHS.branchConductors), summed(SUMMED_LENGTHS.branchRaceway)]} />
      )}
      {site.stalls.length + site.chargers.length + site.raceways.length === 0 ? (
        <>
          <EmptyLot />
          <UnderlaySection />
        </>
      ) : (
        <>
          {open && <CheckList />}
          <WorstMargins />
          {station === 'layout' && <LookTicks />}
          {station === 'price' && (
            <>
              <PricePanel />
              <Quantities />
            </>
          )}
          <h3>Findings</h3>
          <WhyNotSound open={open} onToggle={opens.toggle} />
          <FindingList />
          {station === 'layout' && <AccessibleSection />}
          {station === 'layout' && <ProposeSection />}
          {station === 'layout' && <UnderlaySection />}
          <KindSwitches />
          {station === 'layout' && <SelectLot />}
        </>
      )}
      {station === 'layout' && <SiteForm />}
    </div>
  );
}

/** The worst margin of each kind with the charger it belongs to. */
function WorstMargins() {
  const page = usePageStore();
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const margins = marginsOf(plan, site);
  return (
    <section aria-label="Worst margins">
      <h3>Worst in the lot</h3>
      {MARGIN_KINDS.map((kind) => (
        <Worst key={kind} kind={kind} worst={leastMargin(margins, kind)} />
      ))}
      {margins.values().length > 1 && (
        <button type="button" className="plain worst-all" onClick={() => page.setState({ drawer: 'margins' })}>
          All {margins.values().length} chargers, the worst first
        </button>
      )}
    </section>
  );
}

function Worst({ kind, worst }: { readonly kind: MarginKind; readonly worst: ReturnType<typeof leastMargin> }) {
  const units = useDocument((state) => state.site.units);
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  if (!worst) return null;
  return (
    <MarginBarRow kind={kind} margins={worst} units={units}>
      <button
        type="button"
        className="link"
        onClick={() => {
          const ref = dropRefOf(document.getState().file, worst.charger);
          if (ref) reveal([ref]);
        }}
      >
        {worst.charger}
      </button>
    </MarginBarRow>
  );
}

/** What the board shows over the drawing itself. */
function LookTicks() {
  const view = useViewStore();
  const shaded = useView((state) => state.coverage);
  const bars = useView((state) => state.marginBars);
  const loads = useView((state) => state.memberLoads);
  return (
    <>
      <label className="tick">
        <input type="checkbox" checked={bars} onChange={() => view.setState({ marginBars: !bars })} />
        <span>margins beside every drop</span>
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={shaded}
          onChange={() => view.setState({ coverage: !shaded, memberLoads: false })}
        />
        <span>shade every stall by what is in reach</span>
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={loads}
          onChange={() => view.setState({ memberLoads: !loads, coverage: false })}
        />
        <span>color every beam and purlin by what it carries</span>
      </label>
    </>
  );
}

/** An empty lot invites. */
function EmptyLot() {
  const { openSample } = usePageActions();
  const desk = useDesk();
  return (
    <section className="empty" aria-label="An empty lot">
      <p>Nothing is drawn yet. Draw a row of stalls, open a site file, drop one on the page, or begin from a sample.</p>
      <button type="button" onClick={() => chooseTool(desk, 'stalls')}>
        Draw a row of stalls
      </button>
      <button type="button" onClick={() => openSample('library-lot')}>
        Open the library lot
      </button>
    </section>
  );
}
