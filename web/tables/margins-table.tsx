import { useMemo } from 'react';
import type { ChargerUse } from '../../calc/day/figures/charger-use.ts';
import { energyWords } from '../../calc/day/figures/day-words.ts';
import { MARGIN_KINDS, type MarginKind, type Margins } from '../../calc/plan/margins.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { usePage } from '../page-state/page-store.ts';
import { MarginBar } from '../panels/facts/margin-bar.tsx';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { marginShare } from '../words/margin-scale.ts';
import { marginWords } from '../words/margins.ts';
import { type MarginRow, marginRows, NO_FIGURE } from './margin-rows.ts';
import { type Meters, metersOf } from './meters.ts';
import { useTableFacts } from './table-facts.ts';

/** Every charger with its three margins as bars of one scale down each column; a row and its drop are chosen together. */
export function MarginsTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const { site, plan } = useTableFacts();
  const selection = useDocument((state) => state.selection);
  const decidingDay = usePage((state) => state.decidingDay);
  const meters = useMemo(() => metersOf(site, decidingDay), [site, decidingDay]);
  const chosen = new Set(selection.filter(({ list }) => list === 'drops' || list === 'chargers').map(({ id }) => id));
  return (
    <WindowedTable
      name="Margins"
      rows={marginRows(plan, site)}
      columns={[...columnsFor(site.units), ...meterColumns(meters)]}
      keyOf={({ margins }) => margins.charger}
      isChosen={({ margins, drop }) => chosen.has(drop) || chosen.has(margins.charger)}
      stateOf={({ worst }) => (worst < 0 ? 'fail' : undefined)}
      onChoose={({ drop }, adds) => {
        if (adds) document.getState().select([{ list: 'drops', id: drop }], 'toggle');
        else reveal([{ list: 'drops', id: drop }]);
      }}
    />
  );
}

const columnsFor = (units: Units): readonly ListColumn<MarginRow>[] => [
  { head: 'charger', cell: ({ margins }) => margins.charger, sort: ({ margins }) => margins.charger },
  { head: 'drop', cell: ({ drop }) => drop, sort: ({ drop }) => drop },
  { head: 'stalls', cell: ({ stalls }) => stalls, sort: ({ stalls }) => stalls },
  ...MARGIN_KINDS.map((kind) => ({
    head: kind,
    cell: ({ margins }: MarginRow) => <MarginCell kind={kind} margins={margins} units={units} />,
    sort: ({ margins }: MarginRow) => marginShare(kind, margins) ?? NO_FIGURE,
  })),
];

/** What a charger meters in a billing period of the day that decides, and the cost of its energy. */
function meterColumns(meters: Meters | null): readonly ListColumn<MarginRow>[] {
  if (meters === null) return [];
  const { day, isOnly, uses, isPriced } = meters;
  const which = isOnly ? (isPriced ? ' a period' : ' a day') : `, ${day}`;
  const use = ({ margins }: MarginRow): ChargerUse | undefined => uses.get(margins.charger);
  return [
    {
      head: `energy${which}`,
      numeric: true,
      cell: (row) => energyWords(use(row)?.periodEnergy ?? 0),
      sort: (row) => use(row)?.periodEnergy ?? 0,
    },
    ...(isPriced
      ? [
          {
            head: `cost${which}`,
            numeric: true,
            cell: (row: MarginRow) => (use(row)?.cost ?? 0).toFixed(2),
            sort: (row: MarginRow) => use(row)?.cost ?? 0,
          },
        ]
      : []),
  ];
}

interface MarginCellProps {
  readonly kind: MarginKind;
  readonly margins: Margins;
  readonly units: Units;
}

function MarginCell({ kind, margins, units }: MarginCellProps) {
  const words = marginWords(kind, margins, units);
  const share = marginShare(kind, margins);
  if (!words || share === null) return <span className="quiet">no figure</span>;
  const short = share < 0;
  return (
    <span className="margin-cell" title={words.full}>
      <MarginBar share={share} state={short ? 'fail' : 'pass'} />
      <span className={short ? 'failing' : undefined}>{words.left}</span>
    </span>
  );
}
