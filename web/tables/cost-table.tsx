import { stallsServed } from '../../calc/plan/unit-figures.ts';
import { type CostRow, costOf } from '../../calc/takeoff/cost.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { usePrices } from '../document/files/price-store.ts';
import { useDocument } from '../document/use-document.tsx';
import { type Column, WindowedTable } from '../parts/windowed-table.tsx';
import { dollars } from '../words/dollars.ts';
import { quantityWords } from '../words/quantities.ts';

type Row = Pick<
  CostRow,
  'item' | 'spec' | 'quantity' | 'unit' | 'system' | 'line' | 'how' | 'material' | 'hours' | 'labor' | 'cost'
> & { readonly priced: boolean };

/** What each item costs, material and labour; what has no price stands first. */
export function CostTable() {
  const takeoff = useDocument((state) => state.plan.takeoff);
  const site = useDocument((state) => state.site);
  const list = usePrices((state) => state.list);
  const { rows, missing } = costOf(takeoff, list, stallsServed(site));
  const all: readonly Row[] = [
    ...missing.map(
      (row): Row => ({
        ...row,
        system: 'branches',
        line: '',
        how: 'any',
        material: 0,
        hours: 0,
        labor: 0,
        cost: 0,
        priced: false,
      }),
    ),
    ...rows.map((row): Row => ({ ...row, priced: true })),
  ];
  return (
    <WindowedTable
      name="Cost"
      rows={all}
      columns={columnsFor(site.units)}
      keyOf={({ item, spec, unit }) => `${item} ${spec} ${unit}`}
      stateOf={({ priced }) => (priced ? undefined : 'warn')}
    />
  );
}

const money =
  (pick: (row: Row) => number) =>
  ({ priced, ...row }: Row) =>
    priced ? dollars(pick({ priced, ...row })) : <span className="quiet">no price</span>;

const columnsFor = (units: Units): readonly Column<Row>[] => [
  { head: 'item', cell: ({ item }) => item, sort: ({ item }) => item },
  { head: 'specification', cell: ({ spec }) => spec, sort: ({ spec }) => spec },
  {
    head: 'quantity',
    numeric: true,
    cell: ({ quantity, unit }) => quantityWords(quantity, unit, units),
    sort: ({ quantity }) => quantity,
  },
  { head: 'system', cell: ({ system, priced }) => (priced ? system : ''), sort: ({ system }) => system },
  { head: 'material', numeric: true, cell: money(({ material }) => material), sort: ({ material }) => material },
  { head: 'hours', numeric: true, cell: ({ hours }) => hours.toFixed(2), sort: ({ hours }) => hours },
  { head: 'labor', numeric: true, cell: money(({ labor }) => labor), sort: ({ labor }) => labor },
  { head: 'cost', numeric: true, cell: money(({ cost }) => cost), sort: ({ cost }) => cost },
];
