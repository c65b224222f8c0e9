import { type ReactNode, useState } from 'react';
import { pricedOf } from '../../calc/plan/compared/alternative.ts';
import { withLine } from '../../calc/prices/edit-list.ts';
import type { PriceRow } from '../../calc/prices/price-list.ts';
import { doubtOf } from '../../calc/takeoff/bid/cost.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { withCounts } from '../document/counted-plan.ts';
import { hasCome, priceStore, takePrices, usePrices } from '../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { TypedField } from '../parts/fields.tsx';
import { usePhone } from '../parts/phone.ts';
import { readNumber } from '../parts/read-number.ts';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { dollars } from '../words/dollars.ts';
import { quantityWords } from '../words/quantities.ts';
import { refsOf } from '../words/refs.ts';
import { type BillRow, billRows } from './bill-rows.ts';

/**
 * The bill: a system opens to its lines, a line to what it is made of, and that is shown on the board. Prices and hours are
 * changed where they stand; what has no price or stands on a guess comes first.
 */
export function CostTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const takeoff = useDocument((state) => withCounts(state.plan).takeoff);
  const site = useDocument((state) => state.site);
  const list = usePrices((state) => state.list);
  const isPhone = usePhone();
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set());
  const choose = (row: BillRow): void => {
    if (row.kind === 'element') {
      const { file, plan } = document.getState();
      reveal(refsOf(file, plan, row.part.of));
      return;
    }
    if (row.kind === 'missing') return;
    const next = new Set(turned);
    if (!next.delete(row.key)) next.add(row.key);
    setTurned(next);
  };
  if (!hasCome(list)) return null;
  return (
    <WindowedTable
      name="Cost"
      rows={billRows(pricedOf(takeoff, site, list), turned)}
      columns={isPhone ? sumsFirst(columnsFor(site.units)) : columnsFor(site.units)}
      keyOf={({ key }) => key}
      onChoose={choose}
      stateOf={stateOf}
    />
  );
}

function stateOf(row: BillRow): string | undefined {
  if (row.kind === 'missing') return 'warn';
  if (row.kind === 'line') return doubtOf(row.row) === null ? undefined : 'warn';
  return row.kind === 'group' ? (row.cost === null ? 'warn' : 'group') : 'part';
}

/** The columns with what things cost beside their names: on a phone it would stand past the edge. */
function sumsFirst(columns: readonly ListColumn<BillRow>[]): readonly ListColumn<BillRow>[] {
  const isSum = ({ head }: ListColumn<BillRow>): boolean => head === 'cost';
  const [first, ...others] = columns;
  return [first!, ...others.filter(isSum), ...others.filter((one) => !isSum(one))];
}

const columnsFor = (units: Units): readonly ListColumn<BillRow>[] => [
  { head: 'item', cell: nameOf },
  {
    head: 'specification',
    cell: (row) => (row.kind === 'line' || row.kind === 'missing' ? row.row.spec : ''),
  },
  { head: 'quantity', numeric: true, cell: (row) => quantityOf(row, units) },
  {
    head: 'unit price ($)',
    numeric: true,
    cell: (row) => <Figure row={row} of="material" name="unit price" />,
  },
  { head: 'hours a unit', numeric: true, cell: (row) => <Figure row={row} of="hours" name="hours a unit" /> },
  { head: 'material', numeric: true, cell: (row) => sum(row, ({ material }) => dollars(material)) },
  { head: 'hours', numeric: true, cell: (row) => sum(row, ({ hours }) => hours.toFixed(2)) },
  { head: 'labor', numeric: true, cell: (row) => sum(row, ({ labor }) => dollars(labor)) },
  {
    head: 'cost',
    numeric: true,
    cell: (row) => {
      if (row.kind === 'group') return row.cost === null ? '' : dollars(row.cost);
      if (row.kind === 'missing') return <span className="quiet">no price</span>;
      return row.kind === 'line' ? dollars(row.row.cost) : dollars(row.part.material + row.part.labor);
    },
  },
  {
    head: 'price line used',
    cell: (row) => <span className="quiet">{row.kind === 'line' ? row.row.line : ''}</span>,
  },
];

function nameOf(row: BillRow): ReactNode {
  if (row.kind === 'missing') return row.row.item;
  if (row.kind === 'element') return <span className="bill-part">{row.part.of}</span>;
  const name = row.kind === 'group' ? row.name : row.row.item;
  return (
    <span className={row.kind === 'line' ? 'bill-line' : undefined}>
      <span role="img" aria-label={row.isOpen ? 'open' : 'closed'}>
        {row.isOpen ? '▾' : '▸'}
      </span>{' '}
      {name}
    </span>
  );
}

function quantityOf(row: BillRow, units: Units): string {
  if (row.kind === 'group') return '';
  if (row.kind === 'element') return quantityWords(row.part.quantity, row.part.row.unit, units);
  return quantityWords(row.row.quantity, row.row.unit, units);
}

/** A figure of a line or of what it is made of. */
function sum(
  row: BillRow,
  words: (of: { readonly material: number; readonly hours: number; readonly labor: number }) => string,
): string {
  if (row.kind === 'line') return words(row.row);
  return row.kind === 'element' ? words(row.part) : '';
}

/** Material or hours of one unit, changed where it stands: the line of the price list is made if need be, and kept. */
function Figure({
  row,
  of,
  name,
}: {
  readonly row: BillRow;
  readonly of: 'material' | 'hours';
  readonly name: string;
}) {
  if (row.kind !== 'line' && row.kind !== 'missing') return null;
  const { item, spec, unit } = row.row;
  const figures =
    row.kind === 'line' ? { material: row.row.unitMaterial, hours: row.row.unitHours } : { material: 0, hours: 0 };
  if (row.kind === 'line' && row.row.how === 'quote' && of === 'material')
    return <span className="quiet">in a quote</span>;
  const take = (value: number): void => {
    const line = { item, spec, unit: unit as PriceRow['unit'], ...figures, [of]: value };
    void takePrices(withLine(priceStore.getState().list, line));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only keeps the row from being chosen by what is typed in it
    // biome-ignore lint/a11y/useKeyWithClickEvents: as above
    <span className="in-table" onClick={(event) => event.stopPropagation()}>
      <TypedField
        label={`${name}, ${item} ${spec}`}
        value={Number(figures[of].toPrecision(5))}
        print={String}
        read={(text) => readNumber(text, { unit: '', least: 0 })}
        onChange={take}
      />
    </span>
  );
}
