import { useEffect, useMemo, useRef, useState } from 'react';
import { showPlace } from '../../board/framing.ts';
import { useViewStore } from '../../board/view-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ALL_DROPS } from '../../page-state/build-filter.ts';
import { usePage, usePageStore } from '../../page-state/page-store.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { type BuildRow, buildRows, isShown } from './build-rows.ts';

/** As in the style sheet. */
const ROW_PX = 60;
/** Rows drawn above and below those in view. */
const BEYOND = 6;

/** The rows of the open site, and the way to one of them: it is selected, and the drawing follows. */
export function useBuildRows() {
  const document = useDocumentStore();
  const view = useViewStore();
  const site = useDocument((state) => state.site);
  const rows = useMemo(() => buildRows(site), [site]);
  const go = (id: string): void => {
    const drop = document.getState().site.drops.find((each) => each.id === id);
    if (!drop) return;
    document.getState().select([{ list: 'drops', id }]);
    const [x, y] = drop.retractor ?? drop.box;
    showPlace(view, [x, y]);
  };
  return { rows, go };
}

/** On a phone the list is the page of the person who builds: what is done, where each drop hangs, found by typing. */
export function BuildList() {
  const document = useDocumentStore();
  const page = usePageStore();
  const filter = usePage((state) => state.buildFilter);
  const undoName = useDocument((state) => state.undoName);
  const chosen = useDocument(({ selection: [first] }) => (first?.list === 'drops' ? first.id : null));
  const { rows, go } = useBuildRows();
  const shown = rows.filter((row) => isShown(row, filter));
  const set = (part: Partial<typeof filter>): void => page.setState({ buildFilter: { ...filter, ...part } });
  const notDone = rows.filter(({ done }) => !done).length;
  const off = rows.filter((row) => row.off !== null).length;
  return (
    <section className="build-list" aria-label="Drops to build">
      <div className="build-bar">
        <input
          type="search"
          aria-label="Find a drop, charger, stall or circuit"
          placeholder="Find"
          value={filter.find}
          autoComplete="off"
          autoCapitalize="none"
          enterKeyHint="search"
          onChange={(event) => set({ find: event.target.value })}
        />
        <button type="button" aria-pressed={filter.notDone} onClick={() => set({ notDone: !filter.notDone })}>
          Not done {notDone}
        </button>
        <button type="button" aria-pressed={filter.offDrawing} onClick={() => set({ offDrawing: !filter.offDrawing })}>
          Off {off}
        </button>
        <button
          type="button"
          disabled={!undoName}
          title={undoName ? `Undo ${undoName}` : 'Undo'}
          onClick={document.getState().undo}
        >
          Undo
        </button>
        <button type="button" onClick={() => page.setState({ records: true })}>
          Records
        </button>
      </div>
      <Rows rows={shown} chosen={chosen} go={go} />
      {shown.length === 0 && rows.length > 0 && (
        <p className="build-none">
          No drop is both so named and so done.{' '}
          <button type="button" className="plain" onClick={() => set(ALL_DROPS)}>
            Show all {rows.length}
          </button>
        </p>
      )}
      {rows.length === 0 && <p className="build-none">No drop is drawn.</p>}
    </section>
  );
}

interface RowsProps {
  readonly rows: readonly BuildRow[];
  readonly chosen: string | null;
  readonly go: (id: string) => void;
}

/** Only the rows in view are there; the chosen one is brought to the top, where its card leaves it to be seen. */
function Rows({ rows, chosen, go }: RowsProps) {
  const frame = useRef<HTMLElement>(null);
  const [top, setTop] = useState(0);
  const [height, setHeight] = useState(600);
  const place = rows.findIndex(({ id }) => id === chosen);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const sized = new ResizeObserver(() => setHeight(element.clientHeight));
    sized.observe(element);
    return () => sized.disconnect();
  }, []);
  useEffect(() => {
    if (place >= 0 && frame.current) frame.current.scrollTop = place * ROW_PX;
  }, [place]);
  const first = Math.max(0, Math.floor(top / ROW_PX) - BEYOND);
  const last = Math.min(rows.length, Math.ceil((top + height) / ROW_PX) + BEYOND);
  return (
    <Scroller
      className="build-rows"
      ref={frame}
      aria-label="Drops"
      onScroll={(event) => setTop(event.currentTarget.scrollTop)}
    >
      <ul style={{ paddingTop: first * ROW_PX, paddingBottom: (rows.length - last) * ROW_PX }}>
        {rows.slice(first, last).map(({ id, stalls, done, off, conflict, place: at }) => (
          <li key={id} data-row={id}>
            <button type="button" aria-pressed={id === chosen} onClick={() => go(id)}>
              <span className={done ? 'build-mark build-done' : 'build-mark'} aria-hidden="true">
                {done ? '✓' : ''}
              </span>
              <span className="build-words">
                <b>{id}</b> <span className="quiet">{stalls && `stall ${stalls}`}</span>
                <span className="build-place">{at}</span>
              </span>
              <span className={off || conflict ? 'build-state build-off' : 'build-state'}>
                {conflict ? 'two say' : off ? `off ${off}` : done ? 'done' : 'not done'}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </Scroller>
  );
}
