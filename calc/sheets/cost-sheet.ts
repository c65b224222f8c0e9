import { fromFeet } from '../../routing/site/numbers/units.ts';
import type { Site } from '../../routing/site/site.ts';
import { type CostSheet, SYSTEMS } from '../takeoff/cost.ts';
import { CAUTIONS } from '../words/cautions.ts';
import type { Cell } from './csv.ts';

/** A priced row for each item, what has no price, then the sums: by system, overhead, margin, and a stall. */
export function costSheet({ units }: Pick<Site, 'units'>, cost: CostSheet): readonly (readonly Cell[])[] {
  const amount = (quantity: number, unit: string): [Cell, Cell] =>
    unit === 'ft' ? [Number(fromFeet(quantity, units).toFixed(4)), units] : [quantity, unit];
  const blank = (words: string, dollars: Cell): Cell[] => [words, null, null, null, null, null, null, null, dollars];
  const head = ['item', 'spec', 'quantity', 'unit', 'system', 'material ($)', 'hours', 'labor ($)', 'cost ($)'];
  return [
    head,
    ...cost.rows.map((row): Cell[] => [
      row.item,
      row.spec,
      ...amount(row.quantity, row.unit),
      row.system,
      row.material,
      Number(row.hours.toFixed(3)),
      row.labor,
      row.cost,
    ]),
    ...cost.missing.map(({ item, spec, quantity, unit }): Cell[] => [
      item,
      spec,
      ...amount(quantity, unit),
      null,
      null,
      null,
      null,
      'no price',
    ]),
    [],
    ...SYSTEMS.map((system) => blank(`sum, ${system}`, cost.bySystem[system])),
    blank('sum of rows', cost.cost),
    blank('overhead', cost.overhead),
    blank('margin', cost.margin),
    blank('price', cost.price),
    blank('price per stall served', cost.pricePerStall),
    [],
    [
      `Prices: ${cost.prices}.${cost.missing.length > 0 ? ` ${cost.missing.length} items have no price and are in no sum.` : ''}`,
    ],
    [CAUTIONS],
  ];
}
