import { useState } from 'react';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { FIGURE_NAMES, FIGURES } from '../../../calc/study/figures.ts';
import type { Study, StudyWay } from '../../../calc/study/shape.ts';
import { shownFigure } from '../../../calc/study/shown-figure.ts';
import { STAYS } from '../../../calc/study/study.ts';
import { wayName } from '../../../calc/study/way-name.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePageStore } from '../../page-state/page-store.ts';
import { ChoiceField, NumberField } from '../../parts/fields.tsx';
import { Scroller } from '../../parts/scroller.tsx';
import { type ListColumn, WindowedTable } from '../../parts/windowed-table.tsx';
import { askStudy, stopStudy, useStudies } from '../../proposal/study-store.ts';
import { priceWords } from '../../words/dollars.ts';
import { Scatter, type ScatterUp } from './scatter.tsx';
import { WayCards } from './way-cards.tsx';
import './ways.css';

/** The ways to do the job side by side: price against what cars get, a plan of each, all figures, and what cannot be. */
export function WaysTable() {
  const study = useStudies((state) => state.study);
  return (
    <Scroller className="ways-whole" aria-label="Ways to do the job">
      <Asking />
      {study !== null && study.ways.length > 0 && <Ways study={study} />}
      {study !== null && <Besides study={study} />}
    </Scroller>
  );
}

/** Has them worked out, tells how far that is, and stops it. */
function Asking() {
  const document = useDocumentStore();
  const page = usePageStore();
  const prices = usePrices((state) => state.list);
  const site = useDocument((state) => state.site);
  const name = useDocument((state) => state.name);
  const file = useDocument((state) => state.file);
  const { doing, fault, isStopped, study, file: of } = useStudies((state) => state);
  const [stayHours, setStay] = useState<number>(STAYS.usual);
  const [minutes, setMinutes] = useState(10);
  const ask = (): void => askStudy(document, { prices, stayHours, day: page.getState().decidingDay }, 60 * minutes);
  const isOther = of !== null && of !== file;
  return (
    <div className="ways-ask">
      {doing === null ? (
        <>
          {site.days.length === 0 && (
            <NumberField
              label="cars stay"
              unit="h"
              least={STAYS.least}
              most={STAYS.most}
              value={stayHours}
              onChange={setStay}
            />
          )}
          <NumberField label="at most" unit="min" least={0.1} most={240} value={minutes} onChange={setMinutes} />
          <button type="button" className="small-act" onClick={ask}>
            {of === null ? 'Work out the ways' : `Work out the ways of ${isOther ? name : 'it anew'}`}
          </button>
        </>
      ) : (
        <>
          <p role="status">
            {doing.of > 0
              ? `${doing.done} of ${doing.of} ways are done; now ${doing.says}`
              : `Looking at what stands and where cords come: ${doing.says}`}{' '}
            <progress max={Math.max(1, doing.of)} value={doing.done} aria-label="Ways worked out" />
          </p>
          <button type="button" className="small-act" onClick={stopStudy}>
            Stop, and keep those that are done
          </button>
        </>
      )}
      {fault !== '' && <p role="alert">{fault}</p>}
      {isStopped && (
        <p className="quiet">
          Stopped: {study?.ways.length ?? 0} {study?.ways.length === 1 ? 'is' : 'are'} done. Which nothing beats is said
          of these alone.
        </p>
      )}
      {isOther && study !== null && (
        <p className="quiet">These are the ways of {study.lot}, as it was when they were asked for.</p>
      )}
      {of === null && doing === null && (
        <p className="quiet">
          Each way is drawn whole, planned, priced and checked: overhead or from pedestals, the feeder as it is, raised
          in voltage or new, boards and sizes of chargers. What is drawn of the job stays as it is.
        </p>
      )}
    </div>
  );
}

function Ways({ study }: { readonly study: Study }) {
  const { ways, unbeaten } = study;
  const list = usePrices((state) => state.list);
  const [chosen, setChosen] = useState<string | null>(null);
  const [up, setUp] = useState<ScatterUp>('energy');
  const [isBest, setBest] = useState(false);
  const open = useOpenWay(ways);
  const shown = isBest ? ways.filter(({ id }) => unbeaten.has(id)) : ways;
  const units = ways[0]!.file.units;
  return (
    <>
      <div className="ways-choice">
        <ChoiceField
          label="up the picture"
          value={up}
          choices={['energy', 'fullRate'] as const}
          words={(each) => FIGURES[each].name}
          onChange={setUp}
        />
        <label>
          <input type="checkbox" checked={isBest} onChange={() => setBest(!isBest)} /> only those that nothing beats (
          {unbeaten.size} of {ways.length})
        </label>
      </div>
      <Scatter
        ways={shown}
        unbeaten={unbeaten}
        up={up}
        list={list}
        chosen={chosen}
        onChoose={setChosen}
        onOpen={(id) => void open(id)}
      />
      <WayCards ways={shown} unbeaten={unbeaten} chosen={chosen} onChoose={setChosen} onOpen={(id) => void open(id)} />
      <WindowedTable
        name="All figures of the ways"
        rows={shown}
        columns={columnsFor(unbeaten, units, list)}
        keyOf={({ id }) => id}
        isChosen={({ id }) => id === chosen}
        onChoose={({ id }) => setChosen(id)}
      />
    </>
  );
}

/** Opens a way as a site of its own beside the open one, and says what it asks for. */
function useOpenWay(ways: readonly StudyWay[]): (id: string) => Promise<void> {
  const document = useDocumentStore();
  const { openBeside } = usePageActions();
  return async (id) => {
    const way = ways.find((one) => one.id === id);
    if (way && (await openBeside(way.file))) document.getState().notify(way.says.join(' ') || null);
  };
}

const columnsFor = (
  unbeaten: ReadonlySet<string>,
  units: Units,
  list: Pick<PriceList, 'name'>,
): readonly ListColumn<StudyWay>[] => [
  { head: 'way', cell: ({ id }) => id, sort: ({ id }) => id },
  { head: 'what it is', cell: wayName },
  {
    head: 'nothing beats it',
    cell: ({ id }) => (unbeaten.has(id) ? 'yes' : ''),
    sort: ({ id }) => (unbeaten.has(id) ? 0 : 1),
  },
  ...FIGURE_NAMES.map(
    (figure): ListColumn<StudyWay> => ({
      head: FIGURES[figure].name,
      numeric: true,
      cell: ({ figures }) =>
        figure === 'price' && figures.price !== null
          ? priceWords(figures.price, list)
          : shownFigure(figure, figures[figure], units),
      sort: ({ figures }) => figures[figure] ?? Number.NEGATIVE_INFINITY,
    }),
  ),
];

/** Those that cannot be, and what was looked at. */
function Besides({ study: { cannot, looked, leftOut, ways, assumes } }: { readonly study: Study }) {
  return (
    <div className="ways-besides">
      {cannot.length > 0 && (
        <details className="why" open>
          <summary>Cannot be: {cannot.length}</summary>
          <ul>
            {cannot.map(({ name, says }) => (
              <li key={name}>
                <strong>{name}</strong>: {says}
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="quiet">
        {looked} combinations of mount, supply and charger were looked at, and {ways.length} of them are drawn here.
      </p>
      {[...leftOut.map((one) => `Left out before they were drawn: ${one}`), ...assumes].map((one) => (
        <p key={one} className="quiet">
          {one}
        </p>
      ))}
    </div>
  );
}
