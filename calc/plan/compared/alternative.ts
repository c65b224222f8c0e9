import type { Site } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { dayIn } from '../../prices/read-cells.ts';
import { type CostSheet, costOf } from '../../takeoff/bid/cost.ts';
import { plan } from '../plan.ts';
import type { Alternative } from './comparison.ts';
import { stallsServed } from './unit-figures.ts';

/** A site planned and priced. */
export function alternativeOf(name: string, site: Site, prices: PriceList): Alternative {
  const planned = plan(site);
  return { name, site, plan: planned, cost: pricedOf(planned.takeoff, site, prices) };
}

/** What the takeoff of a site costs, on the day of the bid. */
export const pricedOf = (takeoff: readonly TakeoffRow[], site: Site, prices: PriceList): CostSheet =>
  costOf(takeoff, onBidDay(prices, site.project), stallsServed(site));

/** A list with the day of the bid: its own, else that of the project's latest issue that has a readable one. */
function onBidDay(list: PriceList, { issues = [] }: Site['project']): PriceList {
  if (list.bidDay !== undefined) return list;
  const bidDay = issues
    .map(({ date }) => dayIn(date.trim()))
    .filter((day) => day !== null)
    .sort()
    .at(-1);
  return bidDay === undefined ? list : { ...list, bidDay };
}
