import { INVENTED_LABOR_RATE, INVENTED_PRICES, type PriceRow } from './invented-prices.ts';
import type { PriceList } from './price-list.ts';

const each = (item: string, spec: string, material: number, hours: number): PriceRow => ({
  item,
  spec,
  unit: 'each',
  material,
  hours,
});

/** What is not sized by a curve. All invented. */
const OTHERS: readonly PriceRow[] = [
  each('service equipment', '*', 7800, 26),
  each('switchboard', '*', 9500, 24),
  each('panelboard', '*', 2600, 14),
  each('transformer', '*', 6800, 16),
  each('disconnect', '*', 620, 4),
  each('inverter', '*', 5200, 10),
  each('breaker', '*', 48, 0.4),
  each('main bonding jumper', 'busbar', 140, 1),
  each('system bonding jumper', 'busbar', 140, 1),
  each('electrode connection', '*', 12, 0.4),
  each('ground rod', '*', 24, 0.8),
  each('pull point', '*', 32, 0.7),
  each('junction box', '*', 14, 0.6),
  each('pedestal', '*', 780, 5),
  each('bollard', '*', 310, 3),
  each('core drill', '*', 45, 1.2),
  each('charging module', '*', 690, 1.5),
  each('retractor', '*', 240, 1.5),
  each('cord', '*', 210, 0.5),
  each('label', '*', 1.5, 0.1),
  each('tray support', '*', 22, 0.5),
  each('cover', '*', 4, 0.1),
  each('hanger', '*', 9, 0.25),
  each('trapeze', '12 in', 8, 0.35),
  each('trapeze', '18 in', 11, 0.38),
  each('trapeze', '24 in', 14, 0.42),
  each('trapeze', '30 in', 17, 0.46),
  each('trapeze', '36 in', 20, 0.5),
  each('trapeze', '*', 20, 0.5),
  { item: 'threaded rod', spec: '*', unit: 'ft', material: 0.9, hours: 0.01 },
  each('beam clamp', '*', 4, 0.08),
  { item: 'stringer', spec: '*', unit: 'ft', material: 6, hours: 0.12 },
  each('conduit body', '*', 18, 0.4),
  { item: 'trench', spec: '*', unit: 'ft', material: 16, hours: 0.35 },
];

/** The price list that is there before the estimator brings one: every figure invented, none a supplier's. */
export const INVENTED_LIST: PriceList = {
  name: 'invented prices',
  rows: [
    ...INVENTED_PRICES,
    ...OTHERS.filter((row) => !INVENTED_PRICES.some(({ item, spec }) => item === row.item && spec === row.spec)),
  ],
  rates: { labor: INVENTED_LABOR_RATE, height: 1.15, overhead: 0.1, margin: 0.08 },
};
