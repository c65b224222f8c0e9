import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import { type CostRow, type CostSheet, doubtOf } from '../../takeoff/bid/cost.ts';
import { hours, type LiveCell, type LiveTable, live, money, quantity } from './live.ts';
import { rateCell } from './rates-table.ts';

/** Columns of the bill in the workbook, by their letter. */
export const COST = {
  system: 'F',
  material: 'H',
  unitHours: 'I',
  lift: 'K',
  repetition: 'L',
  hours: 'M',
  labor: 'N',
  cost: 'O',
} as const;

const HEAD = [
  'item',
  'spec',
  'quantity',
  'to buy',
  'unit',
  'system',
  'unit price ($)',
  'material ($)',
  'hours a unit',
  'from a ladder',
  'from a lift',
  'repetition',
  'hours',
  'labor ($)',
  'cost ($)',
  'price line used',
  'in doubt',
];

/** A column of the bill over all its rows: `cost!$H$2:$H$40`. */
export const costColumn = (name: keyof typeof COST, rows: number): string =>
  `cost!$${COST[name]}$2:$${COST[name]}$${rows + 1}`;

/**
 * The bill with its unit prices, hours and factors, of which every sum is worked: who changes a price changes the total.
 * What has no price comes first, with its cell empty.
 */
export function costTable({ units }: Pick<Site, 'units'>, { rows, missing }: CostSheet): LiveTable {
  const one = (unit: string): number => (unit === 'ft' ? fromFeet(1, units) : 1);
  const lines: LiveCell[][] = [];
  const add = (cells: (line: number) => LiveCell[]): void => {
    lines.push(cells(lines.length + 2));
  };
  for (const { item, spec, quantity: many, unit, system, taken } of missing)
    add((line) => [
      item,
      spec,
      quantity(many * one(unit)),
      quantity((taken.bought?.quantity ?? many) * one(unit)),
      unit === 'ft' ? units : unit,
      system,
      money(null),
      ...worked(
        line,
        { material: 0, hours: 0, labor: 0, cost: 0 },
        live(null, 'figure'),
        [(taken.high - (taken.lift ?? 0)) * one(unit), (taken.lift ?? 0) * one(unit)],
        unit,
        1,
      ),
      'no price',
      null,
    ]);
  for (const row of rows)
    add((line) => [
      row.item,
      row.spec,
      quantity(row.quantity * one(row.unit)),
      quantity(row.bought * one(row.unit)),
      row.unit === 'ft' ? units : row.unit,
      row.system,
      live(row.unitMaterial / one(row.unit), 'money'),
      ...worked(
        line,
        row,
        live(row.unitHours / one(row.unit), 'figure'),
        [row.ladder * one(row.unit), row.lift * one(row.unit)],
        row.unit,
        row.repetition,
      ),
      row.line,
      doubtOf(row),
    ]);
  return { name: 'cost', rows: [HEAD, ...lines] };
}

/** The cells from the material to the cost. */
function worked(
  line: number,
  sums: Pick<CostRow, 'material' | 'hours' | 'labor' | 'cost'>,
  unitHours: LiveCell,
  [ladder, lift]: readonly [number, number],
  unit: string,
  repetition: number,
): LiveCell[] {
  const [share, alike] = [rateCell('repetition'), rateCell('alike')];
  const curve = `IF(C${line}>MAX(${alike},1),(C${line}/MAX(${alike},1))^(LN(${share})/LN(2)),1)`;
  const higher = `J${line}*(${rateCell('height')}-1)+K${line}*(${rateCell('lift')}-1)`;
  return [
    money(sums.material, `ROUND(D${line}*G${line},2)`),
    unitHours,
    quantity(ladder),
    quantity(lift),
    live(repetition, 'figure', unit === 'each' ? curve : undefined),
    hours(sums.hours, `(C${line}+${higher})*I${line}*L${line}`),
    money(sums.labor, `ROUND(M${line}*${rateCell('labor')},2)`),
    money(sums.cost, `H${line}+N${line}`),
  ];
}
