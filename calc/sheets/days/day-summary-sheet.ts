import type { Site } from '../../../routing/site/site.ts';
import { figuresOfDay } from '../../day/figures/day-figures.ts';
import { STRATEGY_WORDS } from '../../day/figures/day-words.ts';
import { groundOf } from '../../day/planned-days.ts';
import { STRATEGIES } from '../../day/rules/rules.ts';
import type { Cell } from '../csv.ts';
import { rounded, withCautions, workedDays } from './day-sheets.ts';

/**
 * What each rule gives on each day, and under the one of the lot the least whole figure of each managed limit with which
 * the cars under it get all that their cords could give.
 */
export function daySummarySheet(site: Site): readonly (readonly Cell[])[] | null {
  const days = workedDays(site);
  if (days.length === 0) return null;
  const ground = groundOf(site);
  const head: Cell[] = [
    'day',
    'rule',
    'of the lot',
    'energy (kWh)',
    'asked and not given (kWh)',
    'cars short of what they ask',
    'worst short (kWh)',
    'peak (kW)',
    'energy cost a period',
    'demand cost a period',
    'cost a period',
    'least ceilings',
  ];
  return withCautions([
    head,
    ...days.flatMap(({ day, planned }) => {
      const ceilings = figuresOfDay(day, ground, site.equipment)?.ceilings ?? [];
      const words = ceilings.map(({ limit, least }) => `${limit} ${least === null ? 'none does' : `${least} A`}`);
      return STRATEGIES.map((rule): Cell[] => {
        const one = planned.strategies[rule]!;
        const isOwn = rule === planned.strategy;
        const money = (amount: number): Cell => (day.tariff === undefined ? null : rounded(amount, 2));
        return [
          day.id,
          STRATEGY_WORDS[rule],
          isOwn ? 'yes' : '',
          rounded(one.energy),
          rounded(one.short),
          one.carsShort,
          rounded(one.worstShort),
          rounded(one.peakKw),
          money(one.energyCost),
          money(one.demandCost),
          money(one.cost),
          isOwn ? words.join(', ') : '',
        ];
      });
    }),
  ]);
}
