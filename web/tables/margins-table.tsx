import { MARGIN_KINDS, type MarginKind, type Margins, marginsOf } from '../../calc/margins.ts';
import { remembered } from '../../calc/memo.ts';
import type { Plan } from '../../calc/plan-shape.ts';
import type { Site } from '../../routing/site/site.ts';
import type { Units } from '../../routing/site/vocabulary.ts';
import { useDocument, useDocumentStore } from '../document/use-document.ts';
import { usePageActions } from '../page/page-actions.ts';
import { MarginBar } from '../panels/margin-bar.tsx';
import { marginShare, worstShare } from '../words/margin-scale.ts';
import { marginWords } from '../words/margins.ts';
import { type Column, WindowedTable } from './windowed-table.tsx';

interface MarginRowFacts {
  readonly margins: Margins;
  readonly drop: string;
  readonly stalls: string;
  readonly worst: number | null;
}

/** A charger without a figure comes before all that have one: it has no run or reaches no stall. */
const FIRST = Number.NEGATIVE_INFINITY;

/** Every charger's margins, the worst charger first. */
const marginRows = remembered((plan: Plan, site: Site): readonly MarginRowFacts[] => {
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const margins = marginsOf(plan, site);
  return site.chargers
    .flatMap(({ id, drop, stalls }): MarginRowFacts[] => {
      const own = margins.get(id);
      if (!own) return [];
      return [
        {
          margins: own,
          drop,
          stalls: stalls.map((stall) => labels.get(stall) ?? stall).join(', '),
          worst: worstShare(own),
        },
      ];
    })
    .sort((a, b) => (a.worst ?? FIRST) - (b.worst ?? FIRST) || 0);
});

/** Every charger with its three margins as bars of one scale down each column; a row and its drop are chosen together. */
export function MarginsTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const selection = useDocument((state) => state.selection);
  const chosen = new Set(selection.filter(({ list }) => list === 'drops' || list === 'chargers').map(({ id }) => id));
  return (
    <WindowedTable
      name="Margins"
      rows={marginRows(plan, site)}
      columns={columnsFor(site.units)}
      keyOf={({ margins }) => margins.charger}
      isChosen={({ margins, drop }) => chosen.has(drop) || chosen.has(margins.charger)}
      stateOf={({ worst }) => ((worst ?? FIRST) < 0 ? 'fail' : undefined)}
      onChoose={({ drop }, adds) => {
        if (adds) document.getState().select([{ list: 'drops', id: drop }], 'toggle');
        else reveal([{ list: 'drops', id: drop }]);
      }}
    />
  );
}

const columnsFor = (units: Units): readonly Column<MarginRowFacts>[] => [
  { head: 'charger', cell: ({ margins }) => margins.charger, sort: ({ margins }) => margins.charger },
  { head: 'drop', cell: ({ drop }) => drop, sort: ({ drop }) => drop },
  { head: 'stalls', cell: ({ stalls }) => stalls, sort: ({ stalls }) => stalls },
  ...MARGIN_KINDS.map((kind) => ({
    head: kind,
    cell: ({ margins }: MarginRowFacts) => <MarginCell kind={kind} margins={margins} units={units} />,
    sort: ({ margins }: MarginRowFacts) => marginShare(kind, margins) ?? FIRST,
  })),
];

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
