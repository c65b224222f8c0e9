import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { packageOf } from '../../takeoff/buying/packages.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** Whole feet, or tenths of a meter; the plan keeps the figure in full. */
const asBought = (value: number, units: Site['units']): number =>
  units === 'm' || value < 1 ? Number(value.toFixed(1)) : Math.round(value);

/** A row for each item of the takeoff with its basis and what it is made of; lengths in the site's units. */
export function takeoffSheet(
  { units }: Pick<Site, 'units'>,
  { takeoff }: Pick<Plan, 'takeoff'>,
): readonly (readonly Cell[])[] {
  const rows = takeoff.map(({ item, spec, quantity, bought, unit, basis, of }): Cell[] => {
    const pieces = packageOf(item) === null || unit === 'ft' ? null : Math.ceil(quantity - 1e-9);
    const isLength = unit === 'ft';
    const value = isLength ? fromFeet(quantity, units) : quantity;
    return [
      item,
      spec,
      isLength ? asBought(value, units) : Number(value.toFixed(4)),
      isLength ? units : unit,
      ...(bought === undefined
        ? [pieces, null]
        : [bought.quantity, bought.left].map((feet) => asBought(fromFeet(feet, units), units))),
      basis,
      of.join(' '),
    ];
  });
  return [['item', 'spec', 'quantity', 'unit', 'to buy', 'left over', 'basis', 'made of'], ...rows, [], [CAUTIONS]];
}
