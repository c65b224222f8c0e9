import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { cutPlan } from '../../takeoff/cutting/cut-plan.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A row for each cut: which stick or reel, in what order, for what, how long, and what is left of the stock. */
export function cutsSheet({ units }: Pick<Site, 'units'>, plan: Plan): readonly (readonly Cell[])[] {
  const length = (feet: number): Cell => Number(fromFeet(feet, units).toFixed(4));
  const head = [
    'item',
    'spec',
    `stock (${units})`,
    'stock number',
    'cut',
    'for',
    `length (${units})`,
    `offcut (${units})`,
    'fewest stocks',
  ];
  const rows = cutPlan(plan).flatMap(({ item, spec, stock, stocks, spare, bound, toLength }): Cell[][] => [
    ...stocks.flatMap(({ pieces, offcut }, n) =>
      pieces.map((piece, i): Cell[] => [
        item,
        spec,
        length(stock),
        n + 1,
        i + 1,
        piece.of,
        length(piece.length),
        i === pieces.length - 1 ? length(offcut) : null,
        bound === stocks.length ? 'proved' : `at least ${bound}`,
      ]),
    ),
    ...Array.from({ length: spare }, (_, n): Cell[] => [
      item,
      spec,
      length(stock),
      stocks.length + n + 1,
      null,
      'spare, for waste',
      null,
      length(stock),
      null,
    ]),
    ...toLength.map(({ of, ordered }): Cell[] => [
      item,
      spec,
      'to length',
      null,
      null,
      of,
      length(ordered),
      null,
      null,
    ]),
  ]);
  return [head, ...rows, [], [CAUTIONS]];
}
