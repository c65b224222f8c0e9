import type { Site } from '../../routing/site/site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { costOf } from '../takeoff/cost.ts';
import type { Alternative } from './comparison.ts';
import { plan } from './plan.ts';
import { stallsServed } from './unit-figures.ts';

/** A site planned and priced. */
export function alternativeOf(name: string, site: Site, prices: PriceList): Alternative {
  const planned = plan(site);
  return { name, site, plan: planned, cost: costOf(planned.takeoff, prices, stallsServed(site)) };
}
