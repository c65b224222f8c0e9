import type { SharedPrice } from '../../../routing/propose/shared/shared-cost.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { TakeoffRow } from '../../plan-file/takeoff.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { conductorSpec, racewaySpec } from '../../prices/spec.ts';
import { tablesOf } from '../../tables/editions.ts';
import { supportSpacing } from '../../tables/raceway-of.ts';
import { worthOfRows } from '../bid-worth.ts';
import { trenchFootPrice } from '../panels/trial-price.ts';
import { USUAL_RACEWAY } from '../usual.ts';

/** Of a branch of 40 A, feet of conductor a foot of way: two lines and the ground. */
const CONDUCTORS = 3;

/**
 * Dollars in the bid a foot by which routes are weighed, the height factor on what hangs overhead: a branch's conductors, a conduit of 1 in., what a
 * raceway takes besides, be it hangers or all the work of a trench, and a foot of stringer. What the list has no price for is taken from the invented one.
 */
export function routePrices(
  list: PriceList,
  rules: Rules,
): { readonly price: Readonly<Record<'overhead' | 'underground', SharedPrice>>; readonly stringerFoot: number } {
  const size = rules.metal === 'copper' ? '8' : '6';
  const { circuitsPerConduit } = rules;
  const hangerEvery = supportSpacing(tablesOf(rules), USUAL_RACEWAY.overhead, '1').spacingFt;
  const priced = (place: 'overhead' | 'underground'): SharedPrice => {
    const dollars = pricedBy(list, place === 'overhead');
    return {
      raceway: place === 'overhead' ? dollars('hanger', '*', 'each', 1 / hangerEvery) : trenchFootPrice(rules, list),
      conductor: dollars('conductor', conductorSpec(size, rules.metal, rules.insulation), 'ft', CONDUCTORS),
      conduit: dollars('raceway', racewaySpec(USUAL_RACEWAY[place], '1'), 'ft', 1),
      circuitsPerConduit,
    };
  };
  return {
    price: { overhead: priced('overhead'), underground: priced('underground') },
    stringerFoot: pricedBy(list, true)('stringer', 'channel', 'ft', 1),
  };
}

/** Dollars in the bid of a quantity of an item by a list, else by the invented one; worked off the ground or on it. */
const pricedBy =
  (list: PriceList, isHigh: boolean) =>
  (item: string, spec: string, unit: 'ft' | 'each', quantity: number): number => {
    const row: TakeoffRow = { item, spec, unit, quantity: 1000, high: isHigh ? 1000 : 0, basis: '', of: [], parts: [] };
    return (worthOfRows([row], list) / 1000) * quantity;
  };
