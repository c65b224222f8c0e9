import { cutPlan } from '../../calc/takeoff/cutting/cut-plan.ts';
import type { CutGroup } from '../../calc/takeoff/cutting/stock.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { withCounts } from '../document/counted-plan.ts';
import { useDocument } from '../document/use-document.tsx';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';

interface Row {
  readonly key: string;
  readonly group: CutGroup;
  readonly number: number | null;
  readonly pieces: string;
  readonly offcut: number | null;
}

/** Which stick and which reel gives what, in the order of the cuts. Worked out when it is opened. */
export function CutsTable() {
  const plan = useDocument((state) => state.plan);
  const units = useDocument((state) => state.site.units);
  const rows = cutPlan(withCounts(plan)).flatMap((group): Row[] => [
    ...group.stocks.map(({ pieces, offcut }, n) => ({
      key: `${group.item} ${group.spec} ${n + 1}`,
      group,
      number: n + 1,
      pieces: pieces.map(({ of, length }) => `${of} ${printLength(length, units)}`).join(', '),
      offcut,
    })),
    ...Array.from({ length: group.spare }, (_, n) => ({
      key: `${group.item} ${group.spec} ${group.stocks.length + n + 1}`,
      group,
      number: group.stocks.length + n + 1,
      pieces: 'spare, for waste',
      offcut: group.stock,
    })),
    ...group.toLength.map(({ of, ordered }, n) => ({
      key: `${group.item} ${group.spec} ${of} ${n}`,
      group,
      number: null,
      pieces: `${of} ${printLength(ordered, units)}, ordered to length`,
      offcut: null,
    })),
  ]);
  return <WindowedTable name="Cuts" rows={rows} columns={columnsFor(units)} keyOf={({ key }) => key} />;
}

const columnsFor = (units: Units): readonly ListColumn<Row>[] => [
  { head: 'item', cell: ({ group }) => group.item, sort: ({ group }) => group.item },
  { head: 'specification', cell: ({ group }) => group.spec, sort: ({ group }) => group.spec },
  {
    head: 'stock',
    numeric: true,
    cell: ({ group }) => (group.stock > 0 ? printLength(group.stock, units) : ''),
    sort: ({ group }) => group.stock,
  },
  {
    head: 'number',
    numeric: true,
    cell: ({ number, group }) => (number === null ? '' : `${number} of ${group.stocks.length + group.spare}`),
    sort: ({ number }) => number ?? 0,
  },
  {
    head: 'offcut',
    numeric: true,
    cell: ({ offcut }) => (offcut === null ? '' : printLength(offcut, units)),
    sort: ({ offcut }) => offcut ?? 0,
  },
  { head: 'cut for', cell: ({ pieces }) => <span className="quiet">{pieces}</span> },
];
