import type { Alternative } from '../../plan/compared/comparison.ts';
import { SUBTOTALS, subtotals } from '../../plan/compared/subtotals.ts';
import { unitFigures } from '../../plan/compared/unit-figures.ts';
import { bidLines } from '../../takeoff/bid/bid-lines.ts';
import { doubtOf } from '../../takeoff/bid/cost.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';
import { priceStanding } from './cost-sheet.ts';

/**
 * The bid on a page: the bill with what is laid on it down to the price, the price by what there is, the bill summed by
 * system, phase, panel and area, and what the price stands on and leaves out.
 */
export function bidSheet(priced: Alternative): readonly (readonly Cell[])[] {
  const { cost } = priced;
  const rates = new Map(cost.additions.map((line) => [line.name, line]));
  const line = (part: string, name: string, amount: Cell, more: readonly Cell[] = [null, null, null]): Cell[] => [
    part,
    name,
    ...more,
    amount,
  ];
  return [
    ['part', 'line', 'material ($)', 'hours', 'labor ($)', 'amount ($)', 'of', 'rate'],
    ...bidLines(cost).map(({ name, dollars }): Cell[] => {
      const { of = null, by = null } = rates.get(name) ?? {};
      return [...line('bid', name, dollars), of, by];
    }),
    [],
    ...unitFigures(priced).map(({ name, unit, value }) =>
      line('by unit', name, unit === 'dollars' ? value : null, [
        null,
        unit === 'hours' && value !== null ? Number(value.toFixed(2)) : null,
        null,
      ]),
    ),
    [],
    ...SUBTOTALS.flatMap((by) => [
      ...subtotals(priced, by).map(({ name, material, hours, labor, cost: amount }) =>
        line(`by ${by}`, name, amount, [material, Number(hours.toFixed(2)), labor]),
      ),
      line(`by ${by}`, 'all', cost.cost, [cost.material, Number(cost.hours.toFixed(2)), cost.labor]),
    ]),
    [],
    ...cost.missing.map(({ item, spec }) => line('no price', `${item}, ${spec}`, null)),
    ...cost.rows.flatMap((row): Cell[][] => {
      const doubt = doubtOf(row);
      return doubt === null ? [] : [line(doubt, `${row.item}, ${row.spec}`, row.cost)];
    }),
    ...priceStanding(cost).map((words): Cell[] => [words]),
    [CAUTIONS],
  ];
}
