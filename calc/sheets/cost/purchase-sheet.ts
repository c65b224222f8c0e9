import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { pullSchedule } from '../../takeoff/buying/pull-schedule.ts';
import { type PurchaseLine, purchaseOf } from '../../takeoff/buying/purchase.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** What is bought, by package: a row for each line of an order, each reel with what is pulled from it in its order. */
export function purchaseSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const { units } = site;
  const turn = new Map(pullSchedule(site, plan).map(({ of }, n) => [of, n]));
  const inTurn = ({ bought, of }: PurchaseLine): readonly string[] =>
    bought === 'reel' ? [...of].sort((a, b) => (turn.get(a) ?? 0) - (turn.get(b) ?? 0)) : of;
  const figure = (feet: number): number => Number(fromFeet(feet, units).toFixed(1));
  const head = [
    'package',
    'item',
    'spec',
    'needed',
    'unit',
    'buy',
    'bought as',
    'left over',
    'in packs',
    'lead time (weeks)',
    'submittal',
    'for; of a reel, in the order of the pull schedule',
  ];
  const rows = purchaseOf(plan.takeoff).map((line): Cell[] => {
    const amount = (quantity: number): number => (line.unit === 'ft' ? figure(quantity) : Number(quantity.toFixed(2)));
    return [
      line.package,
      line.item,
      line.spec,
      amount(line.needed),
      line.unit === 'ft' ? units : line.unit,
      line.bought === 'ft' ? figure(line.buy) : line.buy,
      unitWords(line, units, figure),
      amount(line.left),
      line.packs || null,
      line.leadWeeks,
      line.submittal ? 'yes' : null,
      inTurn(line).join(' '),
    ];
  });
  const weeks =
    'Lead times, packs and what is submitted are common practice, no source: suppliers and the contract say.';
  return [head, ...rows, [], [weeks], [CAUTIONS]];
}

function unitWords({ bought, each }: PurchaseLine, units: Site['units'], figure: (feet: number) => number): string {
  if (each === null) return bought === 'ft' ? units : 'each';
  const long = `${figure(each)} ${units}`;
  return bought === 'length' ? `cut to ${long}` : `${bought} of ${long}`;
}
