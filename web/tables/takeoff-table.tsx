import type { TakeoffRow } from '../../calc/plan-file/takeoff.ts';
import { buyWords } from '../../calc/takeoff/buying/buy-words.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { withCounts } from '../document/counted-plan.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { quantityWords } from '../words/quantities.ts';
import { refsOf } from '../words/refs.ts';

/** Quantities with what must be bought for them and their basis; a row shows on the board what it is made of. */
export function TakeoffTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const takeoff = useDocument((state) => withCounts(state.plan).takeoff);
  const units = useDocument((state) => state.site.units);
  return (
    <WindowedTable
      name="Takeoff"
      rows={takeoff}
      columns={columnsFor(units)}
      keyOf={keyOf}
      onChoose={({ of }) => {
        const { file, plan } = document.getState();
        reveal(of.flatMap((id) => refsOf(file, plan, id)));
      }}
    />
  );
}

const keyOf = ({ item, spec, unit }: TakeoffRow): string => `${item} ${spec} ${unit}`;

const columnsFor = (units: Units): readonly ListColumn<TakeoffRow>[] => [
  { head: 'item', cell: ({ item }) => item, sort: ({ item }) => item },
  { head: 'specification', cell: ({ spec }) => spec, sort: ({ spec }) => spec },
  {
    head: 'quantity',
    numeric: true,
    cell: ({ quantity, unit }) => quantityWords(quantity, unit, units),
    sort: ({ quantity }) => quantity,
  },
  {
    head: 'to buy',
    numeric: true,
    cell: (row) => buyWords(row, units).buy,
    sort: ({ bought, quantity }) => bought?.quantity ?? quantity,
  },
  { head: 'left over', numeric: true, cell: (row) => buyWords(row, units).left },
  { head: 'basis', cell: ({ basis }) => <span className="quiet">{basis}</span> },
];
