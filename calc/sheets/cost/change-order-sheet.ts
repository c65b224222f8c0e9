import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { ChangeOrder } from '../../plan/compared/change-order.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A row for each line that a revision adds or deducts, by its number on the drawing; what is laid on them; the total. */
export function changeOrderSheet({ units }: Pick<Site, 'units'>, order: ChangeOrder): readonly (readonly Cell[])[] {
  const amount = (quantity: number, unit: string): Cell =>
    Number((unit === 'ft' ? fromFeet(quantity, units) : quantity).toFixed(4));
  const sum = (words: string, dollars: number): Cell[] => [null, words, ...Array<Cell>(8).fill(null), dollars];
  return [
    [
      'line',
      'item',
      'spec',
      'unit',
      'was',
      'is',
      'adds or deducts',
      'material ($)',
      'hours',
      'labor ($)',
      'extension ($)',
      'elements',
    ],
    ...order.lines.map((line): Cell[] => [
      line.number,
      line.item,
      line.spec,
      line.unit === 'ft' ? units : line.unit,
      amount(line.before, line.unit),
      amount(line.after, line.unit),
      amount(line.after - line.before, line.unit),
      line.material,
      Number(line.hours.toFixed(3)),
      line.labor,
      line.extension,
      line.of.join(' '),
    ]),
    [],
    sum('adds', order.adds),
    sum('deducts', order.deducts),
    ...order.markups.map(({ name, dollars }) => sum(name, dollars)),
    ...(order.restocking === null ? [] : [sum('restocking', order.restocking)]),
    sum('total of the change order', order.total),
    [],
    [CAUTIONS],
  ];
}
