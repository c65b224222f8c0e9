import { INSULATIONS, METALS, METHODS, type Method } from '../../routing/site/schema/vocabulary.ts';
import type { TrafficRating } from '../plan-file/branches.ts';
import { circularMils } from '../tables/conductor-of.ts';
import { DEFAULT_TABLES } from '../tables/editions.ts';
import { HANDHOLE_SIZES, TRAFFIC_RATINGS } from '../tables/handholes.ts';
import { tradeSizes } from '../tables/raceway-of.ts';
import { CONDUCTOR_SIZES, tradeSizeInches } from '../tables/sizes.ts';
import type { PriceRow } from './price-list.ts';
import { bareSpec, breakerSpec, conductorSpec, degreesInWords, ELBOWS, racewaySpec, wireSpec } from './spec.ts';

/** Dollars an hour. Invented. */
export const INVENTED_LABOR_RATE = 95;

/** Dollars and hours a foot, and a foot more for each inch of trade size. All invented. */
const RACEWAY: Readonly<Record<Method, { readonly material: number; readonly hours: number }>> = {
  EMT: { material: 1.7, hours: 0.045 },
  IMC: { material: 4.2, hours: 0.07 },
  RMC: { material: 5.4, hours: 0.08 },
  PVC40: { material: 1.2, hours: 0.035 },
  PVC80: { material: 1.9, hours: 0.04 },
  LFMC: { material: 3.1, hours: 0.05 },
  tray: { material: 14, hours: 0.18 },
};

const racewayRows = METHODS.flatMap((method): PriceRow[] => {
  const { material, hours } = RACEWAY[method];
  if (method === 'tray') {
    const spec = racewaySpec(method, null);
    const angles = ELBOWS.map(
      (angle): PriceRow => ({
        item: 'elbow',
        spec: `${spec}, ${degreesInWords(angle)}`,
        unit: 'each',
        material: 62,
        hours: 0.8,
      }),
    );
    return [
      { item: 'raceway', spec, unit: 'ft', material, hours },
      { item: 'coupling', spec, unit: 'each', material: 9, hours: 0.15 },
      ...angles,
    ];
  }
  return tradeSizes(DEFAULT_TABLES, method).flatMap((tradeSize): PriceRow[] => {
    const spec = racewaySpec(method, tradeSize);
    const inches = tradeSizeInches(tradeSize);
    const rows: PriceRow[] = [
      { item: 'raceway', spec, unit: 'ft', material: material * inches ** 1.25, hours: hours * (0.5 + inches / 2) },
      { item: 'coupling', spec, unit: 'each', material: 0.6 * material * inches ** 1.4, hours: 0.05 },
      { item: 'connector', spec, unit: 'each', material: 0.8 * material * inches ** 1.4, hours: 0.1 + 0.06 * inches },
      { item: 'strap', spec, unit: 'each', material: 0.9 + 0.4 * inches, hours: 0.06 },
      { item: 'expansion fitting', spec, unit: 'each', material: 8 * material * inches, hours: 0.25 },
    ];
    rows.push({ item: 'field bend', spec, unit: 'each', material: 0, hours: 0.08 + 0.09 * inches });
    for (const angle of ELBOWS)
      rows.push({
        item: 'elbow',
        spec: `${spec}, ${degreesInWords(angle)}`,
        unit: 'each',
        material: 2.4 * material * inches ** 1.5,
        hours: 0.12 + 0.1 * inches,
      });
    return rows;
  });
});

const conductorRows = METALS.flatMap((metal) =>
  INSULATIONS.flatMap((insulation) =>
    CONDUCTOR_SIZES.filter((size) => size !== '18' && size !== '16').map((size): PriceRow => {
      const kcmil = circularMils(DEFAULT_TABLES, size) / 1000;
      return {
        item: 'conductor',
        spec: conductorSpec(size, metal, insulation),
        unit: 'ft',
        material: 0.07 + kcmil * (metal === 'copper' ? 0.024 : 0.0075),
        hours: 0.003 + kcmil * 0.00007,
      };
    }),
  ),
);

/** What is made up at the ends of feeders, by size, and bushings by trade size. All invented. */
const endRows: readonly PriceRow[] = [
  ...METALS.flatMap((metal) =>
    CONDUCTOR_SIZES.filter((size) => circularMils(DEFAULT_TABLES, size) >= 4000).flatMap((size): PriceRow[] => {
      const kcmil = circularMils(DEFAULT_TABLES, size) / 1000;
      const each = { spec: wireSpec(size, metal), unit: 'each' } as const;
      return [
        { item: 'termination', ...each, material: 0.4 + kcmil * 0.004, hours: 0.1 + kcmil * 0.0018 },
        { item: 'lug', ...each, material: 2 + kcmil * 0.055, hours: 0.05 },
        { item: 'wire connector', ...each, spec: `to ${each.spec}`, material: 0.3 + kcmil * 0.02, hours: 0.04 },
      ];
    }),
  ),
  ...tradeSizes(DEFAULT_TABLES, 'RMC').map((tradeSize): PriceRow => {
    const inches = tradeSizeInches(tradeSize);
    return {
      item: 'bushing',
      spec: `insulating, ${tradeSize} in`,
      unit: 'each',
      material: 0.5 + 1.1 * inches ** 1.3,
      hours: 0.04 + 0.03 * inches,
    };
  }),
];

/** Breakers by poles and amperes, up to the largest standard rating. All invented. */
const breakerRows = [1, 2, 3].flatMap((poles) =>
  DEFAULT_TABLES.standardRatings.rows.map(
    (amps): PriceRow => ({
      item: 'breaker',
      spec: breakerSpec(poles, amps),
      unit: 'each',
      material: poles * 24 * (amps / 40) ** (amps > 40 ? 1.35 : 0.4),
      hours: 0.15 * poles + 0.0025 * amps,
    }),
  ),
);

/** Bare copper to electrodes and round them by the foot, and jumpers in equipment by the piece. All invented. */
const groundingRows = CONDUCTOR_SIZES.filter((size) => circularMils(DEFAULT_TABLES, size) >= 16_000).flatMap(
  (size): PriceRow[] => {
    const kcmil = circularMils(DEFAULT_TABLES, size) / 1000;
    const spec = bareSpec(size, 'copper');
    const foot = { spec, unit: 'ft', material: 0.05 + kcmil * 0.021, hours: 0.03 + kcmil * 0.0001 } as const;
    const piece = { spec, unit: 'each', material: 9 + kcmil * 0.12, hours: 0.4 + kcmil * 0.0012 } as const;
    return [
      { item: 'electrode conductor', ...foot },
      { item: 'ground ring', ...foot },
      { item: 'main bonding jumper', ...piece },
      { item: 'system bonding jumper', ...piece },
    ];
  },
);

/** A handhole by its longer side, with its cover, and how much more it costs for what comes over it. All invented. */
const RATED: Readonly<Record<TrafficRating, number>> = { 'Tier 8': 0.8, 'Tier 22': 1, 'H-20': 2.4 };
const handholeRows = HANDHOLE_SIZES.flatMap(([size, inches]) =>
  TRAFFIC_RATINGS.map(
    (rating): PriceRow => ({
      item: 'handhole',
      spec: `${size}, ${rating}`,
      unit: 'each',
      material: 6.5 * inches ** 1.25 * RATED[rating],
      hours: 1.2 + 0.06 * inches,
    }),
  ),
);

/**
 * A price list to have figures at all: invented for this project, smooth curves over size, no supplier's or contractor's.
 * An estimator replaces it.
 */
export const INVENTED_PRICES: readonly PriceRow[] = [
  ...racewayRows,
  ...conductorRows,
  ...groundingRows,
  ...handholeRows,
  ...breakerRows,
  ...endRows,
  { item: 'junction box', spec: 'on the raceway', unit: 'each', material: 14, hours: 0.6 },
];
