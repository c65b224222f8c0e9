import { INVENTED_BOXES } from './invented-boxes.ts';
import { INVENTED_GEAR } from './invented-gear.ts';
import { INVENTED_GROUND } from './invented-ground.ts';
import { INVENTED_PRICES } from './invented-prices.ts';
import { INVENTED_NAME, type PriceList, type PriceRow } from './price-list.ts';
import { RATE_FACTS } from './rate-facts.ts';
import { type CrewMember, crewRate, RATES, type Rate, type Rates } from './rates.ts';

const line = (item: string, spec: string, unit: PriceRow['unit'], material: number, hours: number): PriceRow => ({
  item,
  spec,
  unit,
  material,
  hours,
});
const each = (item: string, spec: string, material: number, hours: number): PriceRow =>
  line(item, spec, 'each', material, hours);

/** What comes in one size, and what goes by another measure than a rating. All invented. */
const OTHERS: readonly PriceRow[] = [
  each('main bonding jumper', 'busbar', 140, 1),
  each('system bonding jumper', 'busbar', 140, 1),
  each('electrode connection', 'clamp or weld', 12, 0.4),
  each('ground rod', '5/8 in x 8 ft', 24, 0.8),
  each('junction box', 'at the drop, no circuit yet', 11, 0.6),
  each('pull point', 'no circuit passes', 11, 0.6),
  each('pedestal', 'box and cord', 780, 5),
  each('retractor', 'cord', 240, 1.5),
  each('label', 'circuit', 1.5, 0.1),
  each('bonding pigtail', 'with screw', 1.2, 0.05),
  each('strain relief', 'at 16 A', 14, 0.2),
  each('strain relief', 'at 32 A', 19, 0.22),
  each('strain relief', 'at 80 A', 38, 0.3),
  each('test', 'feeder, insulation resistance', 0, 1),
  each('test', 'branch circuit, insulation resistance and polarity', 0, 0.25),
  each('test', 'charger, commissioning', 4, 0.75),
  each('trapeze', '12 in', 8, 0.35),
  each('trapeze', '18 in', 11, 0.38),
  each('trapeze', '24 in', 14, 0.42),
  each('trapeze', '30 in', 17, 0.46),
  each('trapeze', '36 in', 20, 0.5),
  line('threaded rod', '3/8 in', 'ft', 0.9, 0.01),
  each('beam clamp', '3/8 in', 4, 0.08),
  line('stringer', 'channel', 'ft', 6, 0.12),
];

/** What has no size to go by: any one of its item. A price that stands on one of these is a guess, and said to be one. */
const GENERAL: readonly PriceRow[] = [
  each('service equipment', '*', 7800, 26),
  each('switchboard', '*', 9500, 24),
  each('panelboard', '*', 2600, 14),
  each('transformer', '*', 6800, 16),
  each('disconnect', '*', 620, 4),
  each('inverter', '*', 5200, 10),
  each('hanger', '*', 9, 0.25),
  line('trench', '*', 'ft', 16, 0.35),
];

/** The crew that does the work: its mean wage with the burden is the labor rate. Wages invented. */
const CREW: readonly CrewMember[] = [
  { trade: 'foreman', wage: 72, count: 1 },
  { trade: 'journeyman', wage: 66, count: 4 },
  { trade: 'apprentice', wage: 44, count: 1 },
];
const RATES_OF_ALL = Object.fromEntries(RATES.map((rate) => [rate, RATE_FACTS[rate].invented])) as Record<Rate, number>;
const rates: Rates = { ...RATES_OF_ALL, labor: crewRate(CREW, RATE_FACTS.burden.invented) };

/** Curves as a list shows them: to four figures. */
const tidy = (row: PriceRow): PriceRow => ({
  ...row,
  material: Number(row.material.toPrecision(4)),
  hours: Number(row.hours.toPrecision(4)),
});

/** The price list that is there before the estimator brings one: every figure invented, none a supplier's. */
export const INVENTED_LIST: PriceList = {
  name: INVENTED_NAME,
  rows: [
    ...INVENTED_PRICES.filter(({ item, spec }) => item !== 'junction box' || spec !== 'on the raceway'),
    ...INVENTED_GEAR,
    ...INVENTED_BOXES,
    ...OTHERS,
    ...INVENTED_GROUND,
    ...GENERAL,
  ].map(tidy),
  rates,
  crew: CREW,
  exclusions: [
    'Fees and work of the utility',
    'Engineering, structural checks and stamped drawings',
    'Hazardous or unsuitable soil, rock and dewatering',
    'Work outside normal hours',
  ],
};
