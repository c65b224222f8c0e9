import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { emptyRacewayPrice, priceChange, usedPrice } from '../../../calc/takeoff/bid/price-change.ts';
import { oneRun, raceway } from '../../routing/network/sites.ts';

const row = (item: string, spec: string, quantity: number, unit = 'ft'): TakeoffRow => ({
  item,
  spec,
  quantity,
  high: 0,
  unit,
  basis: '',
  of: [],
  parts: [],
});
const LIST: PriceList = {
  name: 'by hand',
  rows: [
    { item: 'raceway', spec: 'EMT 3/4 in', unit: 'ft', material: 1.5, hours: 0.05 },
    { item: 'trench', spec: '*', unit: 'ft', material: 2, hours: 0.08 },
  ],
  rates: { labor: 100, height: 1.2, overhead: 0.1, margin: 0.05 },
};
const TRENCH = row('trench', 'asphalt, 24 in deep', 10);

describe('what a change of the takeoff comes to', () => {
  test('is the price of what is more, with overhead and margin', () => {
    // 10 ft of trench: 20 + 0.8 h x 100 = 100; overhead 10; margin 5% of 110 = 5.50.
    expect(priceChange([], [TRENCH], LIST)).toEqual({ adds: 115.5, missing: [], groundOnly: true });
    expect(priceChange([TRENCH], [], LIST)).toEqual({ adds: -115.5, missing: [], groundOnly: true });
  });

  test('tells what the list has no price for, and only where there is more of it than before', () => {
    const lacked = row('raceway', 'RMC 2 in', 5);
    expect(priceChange([lacked], [lacked, row('strap', 'RMC 2 in', 1, 'each')], LIST).missing).toEqual([
      'strap, RMC 2 in',
    ]);
    expect(priceChange([lacked], [row('raceway', 'RMC 2 in', 8)], LIST)).toEqual({
      adds: 0,
      missing: ['raceway, RMC 2 in'],
      groundOnly: false,
    });
  });

  test('no change is none', () => {
    expect(priceChange([TRENCH], [{ ...TRENCH }], LIST)).toEqual({ adds: 0, missing: [], groundOnly: true });
  });
});

test('a raceway with nothing in it is priced as one conduit of 3/4 in, and not where the list has none', () => {
  // 100 ft overhead: 150 + 100 x 0.05 x 1.2 h x 100 = 750; overhead 75; margin 5% of 825 = 41.25.
  expect(emptyRacewayPrice('EMT', 100, { high: 100, lift: 0 }, LIST)).toBeCloseTo(866.25, 9);
  // In the ground: 150 + 500 = 650; 65; 35.75.
  expect(emptyRacewayPrice('EMT', 100, { high: 0, lift: 0 }, LIST)).toBeCloseTo(750.75, 9);
  expect(emptyRacewayPrice('tray', 100, { high: 0, lift: 0 }, LIST)).toBeNull();
});

test('the price by lengths alone goes up with each half foot, where the price of what is bought stands or leaps', () => {
  const at = (feet: number) => {
    const site = oneRun(
      [
        raceway('R1', [
          [0, 0, 10],
          [feet, 0, 10],
        ]),
      ],
      [0, 0, 10],
      [feet, 0, 10],
    );
    const { cost } = alternativeOf('one', site, INVENTED_LIST);
    return { bought: cost.price, used: usedPrice(cost) };
  };
  // From 41 to 43 ft: five sticks and one coil of wire all the way.
  const prices = [41, 41.5, 42, 42.5, 43].map(at);
  const steps = (of: 'bought' | 'used') => prices.slice(1).map((price, i) => price[of] - prices[i]![of]);
  for (const step of steps('used')) expect(step).toBeGreaterThan(0.5);
  const used = steps('used');
  expect(Math.max(...used) - Math.min(...used)).toBeLessThan(0.1);
  for (const { bought, used: exact } of prices) expect(bought).toBeGreaterThan(exact);
});
