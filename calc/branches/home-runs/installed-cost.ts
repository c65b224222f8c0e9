import type { Metal, Method } from '../../../routing/site/schema/vocabulary.ts';
import { INVENTED_LABOR_RATE, INVENTED_PRICES } from '../../prices/invented-prices.ts';
import type { PriceRow } from '../../prices/price-list.ts';
import { conductorSpec, racewaySpec } from '../../prices/spec.ts';
import { HANDHOLE_SIZES } from '../../tables/handholes.ts';

/** Dollars in place, material and labour, of what the sharing of conduits changes. */
export interface InstalledCost {
  /** A foot of conduit with its couplings and straps. */
  racewayFoot(method: Method, tradeSize: string | null): number;
  /** The two ends of one conduit. */
  racewayEnds(method: Method, tradeSize: string | null): number;
  bend(method: Method, tradeSize: string | null): number;
  conductorFoot(size: string, metal: Metal, insulation: string): number;
  /** A box where circuits part, on the raceway above grade and in the ground. */
  readonly junction: number;
  readonly handhole: number;
}

/** Cost by a price list and a labour rate. What the list does not hold costs nothing here. */
export function installedCost(prices: readonly PriceRow[], laborRate: number): InstalledCost {
  const each = new Map(prices.map((row) => [`${row.item} ${row.spec}`, row.material + row.hours * laborRate]));
  const cost = (item: string, spec: string): number => each.get(`${item} ${spec}`) ?? 0;
  return {
    racewayFoot: cached((method, tradeSize) => {
      const spec = racewaySpec(method, tradeSize);
      return cost('raceway', spec) + (cost('coupling', spec) + cost('strap', spec)) / 10;
    }),
    racewayEnds: cached((method, tradeSize) => 2 * cost('connector', racewaySpec(method, tradeSize))),
    bend: cached((method, tradeSize) => cost('elbow', `${racewaySpec(method, tradeSize)}, 90 degrees`)),
    conductorFoot: (size, metal, insulation) => cost('conductor', conductorSpec(size, metal, insulation)),
    junction: cost('junction box', 'on the raceway'),
    handhole: cost('handhole', `${HANDHOLE_SIZES[0]![0]}, Tier 22`),
  };
}

function cached(work: (method: Method, tradeSize: string | null) => number): typeof work {
  const known = new Map<string, number>();
  return (method, tradeSize) => {
    const key = `${method} ${tradeSize}`;
    let value = known.get(key);
    if (value === undefined) {
      value = work(method, tradeSize);
      known.set(key, value);
    }
    return value;
  };
}

/** By the invented price list. */
export const INVENTED_COST: InstalledCost = installedCost(INVENTED_PRICES, INVENTED_LABOR_RATE);
