import type { Site } from '../../../routing/site/site.ts';
import { OPEN_KINDS, openItems } from '../../field/open/open-items.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { CostSheet } from '../../takeoff/bid/cost.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** Everything that is still open, kind by kind. */
export const openItemsSheet = (
  site: Site,
  plan: Plan,
  cost: Pick<CostSheet, 'quotes' | 'bidDay'>,
): readonly (readonly Cell[])[] => [
  ['kind', 'of', 'what is open', 'by', 'on'],
  ...openItems(site, plan, cost).map(({ kind, of, says, by, on }): Cell[] => [
    OPEN_KINDS[kind],
    of || null,
    says,
    by || null,
    on || null,
  ]),
  [],
  [CAUTIONS],
];
