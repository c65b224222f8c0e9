import { type CSSProperties, type PointerEvent as HandEvent, useRef } from 'react';
import { useDocument } from '../document/use-document.tsx';
import { useTakeoff } from '../document/use-takeoff.ts';
import { DRAWERS, type DrawerTable, usePage, usePageStore } from '../page-state/page-store.ts';
import { whenAsked } from '../page-state/when-asked.tsx';

const NAMES: Readonly<Record<DrawerTable, string>> = {
  runs: 'Runs',
  margins: 'Margins',
  'one-line': 'One-line',
  panels: 'Panels',
  day: 'Charging day',
  takeoff: 'Takeoff',
  cost: 'Cost',
  cuts: 'Cuts',
  alternatives: 'Alternatives',
  ways: 'Ways',
  'setting-out': 'Setting out',
};
const TABLES = {
  runs: whenAsked(async () => (await import('./runs-table.tsx')).RunsTable),
  margins: whenAsked(async () => (await import('./margins-table.tsx')).MarginsTable),
  'one-line': whenAsked(async () => (await import('./one-line/one-line.tsx')).OneLine),
  day: whenAsked(async () => (await import('./day/day-table.tsx')).DayTable),
  panels: whenAsked(async () => (await import('./panels/panels.tsx')).Panels),
  takeoff: whenAsked(async () => (await import('./takeoff-table.tsx')).TakeoffTable),
  cost: whenAsked(async () => (await import('./cost-table.tsx')).CostTable),
  cuts: whenAsked(async () => (await import('./cuts-table.tsx')).CutsTable),
  alternatives: whenAsked(async () => (await import('./compare-table.tsx')).CompareTable),
  ways: whenAsked(async () => (await import('./ways/ways-table.tsx')).WaysTable),
  'setting-out': whenAsked(async () => (await import('./setting-out-table.tsx')).SettingOutTable),
} as const;
const LEAST_PX = 120;
const STEP_PX = 24;

/** The tables under the board, one at a time; the bar with their names is always there. */
export function Drawer() {
  const page = usePageStore();
  const open = usePage((state) => state.drawer);
  const height = usePage((state) => state.drawerHeight);
  const runs = useDocument((state) => state.plan.runs.length);
  const rows = useTakeoff()?.length;
  const margins = useDocument((state) => state.site.chargers.length);
  const drops = useDocument((state) => state.site.drops.length);
  const counts: Readonly<Partial<Record<DrawerTable, number | undefined>>> = {
    runs,
    margins,
    takeoff: rows,
    'setting-out': drops,
  };
  const Table = open ? TABLES[open] : null;
  return (
    <section className="drawer" aria-label="Tables">
      {open && <Grip height={height} />}
      <div className="drawer-bar">
        {DRAWERS.map((name) => (
          <button
            key={name}
            type="button"
            aria-expanded={open === name}
            aria-controls="drawer-table"
            onClick={() => page.setState({ drawer: open === name ? null : name })}
          >
            {NAMES[name]} <span className="quiet">{counts[name]}</span>
          </button>
        ))}
      </div>
      {Table && (
        <div className="drawer-table" id="drawer-table" style={{ '--drawer-height': `${height}px` } as CSSProperties}>
          <Table />
        </div>
      )}
    </section>
  );
}

/** The edge by which the tables are made higher or lower, by hand or with the arrows. */
function Grip({ height }: { readonly height: number }) {
  const page = usePageStore();
  const from = useRef<{ readonly y: number; readonly height: number } | null>(null);
  const set = (wanted: number): void =>
    page.setState({ drawerHeight: Math.min(window.innerHeight * 0.7, Math.max(LEAST_PX, wanted)) });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a separator that is moved has no element of its own
    <div
      className="grip"
      role="separator"
      aria-orientation="horizontal"
      aria-label="Height of the tables"
      aria-valuenow={Math.round(height)}
      aria-valuemin={LEAST_PX}
      tabIndex={0}
      onPointerDown={(event: HandEvent<HTMLDivElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { y: event.clientY, height };
      }}
      onPointerMove={(event) => from.current && set(from.current.height + from.current.y - event.clientY)}
      onPointerUp={() => {
        from.current = null;
      }}
      onKeyDown={(event) => {
        if (event.key === 'ArrowUp') set(height + STEP_PX);
        if (event.key === 'ArrowDown') set(height - STEP_PX);
      }}
    />
  );
}
