import type { MarginKind } from '../../calc/plan/margins.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { SeveritySign } from '../parts/severity-sign.tsx';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { nearestInch, spareOrShort } from '../words/lengths.ts';
import { type RunRow, runRows } from './run-rows.ts';
import { useTableFacts } from './table-facts.ts';

/** Every run with its three margins and its circuit; a row and its drop on the board are chosen together. */
export function RunsTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const { site, plan } = useTableFacts();
  const selection = useDocument((state) => state.selection);
  const chosen = new Set(selection.filter(({ list }) => list === 'drops' || list === 'chargers').map(({ id }) => id));
  const rows = runRows(plan, site);
  return (
    <WindowedTable
      name="Runs"
      rows={rows}
      columns={columnsFor(site.units)}
      keyOf={({ charger }) => charger}
      isChosen={({ charger, drop }) => chosen.has(drop) || chosen.has(charger)}
      stateOf={(row) => (isShort(row) ? 'fail' : undefined)}
      onChoose={({ drop }, adds) => {
        if (adds) document.getState().select([{ list: 'drops', id: drop }], 'toggle');
        else reveal([{ list: 'drops', id: drop }]);
      }}
    />
  );
}

const isShort = ({ margins, run }: RunRow): boolean =>
  run.length === null ||
  (['cord', 'branch', 'volts'] as const).some((kind: MarginKind) => (margins?.[kind]?.left ?? 0) < 0);

const FAR = Number.NEGATIVE_INFINITY;

function columnsFor(units: Units): readonly ListColumn<RunRow>[] {
  const length = (feet: number | null | undefined): string => nearestInch(feet ?? Number.NaN, units);
  return [
    { head: 'charger', cell: ({ charger }) => charger, sort: ({ charger }) => charger },
    { head: 'drop', cell: ({ drop }) => drop, sort: ({ drop }) => drop },
    { head: 'from', cell: ({ run }) => run.from, sort: ({ run }) => run.from },
    {
      head: 'run',
      numeric: true,
      cell: ({ run }) => (run.length === null ? <Failing>no run</Failing> : length(run.length)),
      sort: ({ run }) => run.length ?? Number.POSITIVE_INFINITY,
    },
    {
      head: 'conductor of limit',
      numeric: true,
      cell: ({ run, margins }) =>
        margins?.branch ? (
          <Judged left={margins.branch.left}>
            {length(run.conductorLength)} <span className="quiet">of {length(margins.branch.limit)}</span>
          </Judged>
        ) : (
          '–'
        ),
      sort: ({ margins }) => margins?.branch?.left ?? FAR,
    },
    {
      head: 'cord',
      numeric: true,
      cell: ({ margins }) =>
        margins?.cord ? <Judged left={margins.cord.left}>{spareOrShort(margins.cord.left, units)}</Judged> : '–',
      sort: ({ margins }) => margins?.cord?.left ?? FAR,
    },
    {
      head: 'volts drop',
      numeric: true,
      cell: ({ margins }) =>
        margins?.volts ? (
          <Judged
            left={margins.volts.left}
          >{`${margins.volts.used.toFixed(2)}%${margins.volts.of === 'total' ? ' in all' : ''}`}</Judged>
        ) : (
          '–'
        ),
      sort: ({ margins }) => margins?.volts?.left ?? FAR,
    },
    {
      head: 'breaker',
      numeric: true,
      cell: ({ circuit }) => (circuit ? `${circuit.breakerAmps} A` : '–'),
      sort: ({ circuit }) => circuit?.breakerAmps ?? 0,
    },
    { head: 'phase', cell: ({ circuit }) => circuit?.phases ?? '–', sort: ({ circuit }) => circuit?.phases ?? '' },
    {
      head: 'conductor',
      cell: ({ circuit }) =>
        circuit
          ? `${circuit.phases.length} #${circuit.conductor.size} ${circuit.conductor.metal === 'copper' ? 'Cu' : 'Al'}, #${circuit.grounding.size} G`
          : '–',
      sort: ({ circuit }) => circuit?.conductor.size ?? '',
    },
    {
      head: 'conduit',
      cell: ({ conduit }) =>
        conduit ? `${conduit.tradeSize ? `${conduit.tradeSize}" ` : ''}${conduit.method}, ${conduit.id}` : '–',
      sort: ({ conduit }) => conduit?.id ?? '',
    },
  ];
}

const Failing = ({ children }: { readonly children: React.ReactNode }) => (
  <span className="failing">
    <SeveritySign severity="fail" /> {children}
  </span>
);

function Judged({ left, children }: { readonly left: number; readonly children: React.ReactNode }) {
  return left < 0 ? <Failing>{children}</Failing> : children;
}
