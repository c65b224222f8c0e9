import type { PriceRow } from './price-list.ts';

const line = (item: string, spec: string, unit: PriceRow['unit'], material: number, hours: number): PriceRow => ({
  item,
  spec,
  unit,
  material,
  hours,
});

const WIDTHS = [12, 18, 24, 30, 36];
const DEPTHS = [12, 24, 36, 48];

/** Digging by what is over it, for a foot 24 in deep and 12 in wide. All invented. */
const DUG = [
  ['soil', 4, 0.1],
  ['asphalt', 6, 0.15],
  ['concrete', 9, 0.22],
] as const;
const dug = DUG.flatMap(([surface, material, hours]) =>
  WIDTHS.flatMap((wide) =>
    DEPTHS.map((deep) => {
      const more = (0.4 + 0.6 * (deep / 24)) * (0.4 + 0.6 * (wide / 12));
      return line('trench', `at ${deep} in deep, ${surface}, ${wide} in wide`, 'ft', material * more, hours * more);
    }),
  ),
);
const filled = WIDTHS.flatMap((wide) =>
  DEPTHS.map((deep) => {
    const more = (deep / 24) * (wide / 12);
    return line('backfill', `at ${deep} in deep, ${wide} in wide`, 'ft', 0.8 * more, 0.05 * more);
  }),
);

/** Paving made good, by the foot of a strip so wide. All invented. */
const PATCHED = [
  ['soil', 0.6, 0.015],
  ['asphalt', 5.5, 0.05],
  ['concrete', 9, 0.09],
] as const;
const patched = PATCHED.flatMap(([surface, material, hours]) =>
  [12, 24, 48].map((wide) =>
    line('patch', `at ${wide} in wide, ${surface}`, 'ft', (material * wide) / 12, (hours * wide) / 12),
  ),
);

/** A pad by its area. All invented. */
const pads = [6, 12, 25, 50, 100, 200].map((feet) =>
  line('equipment pad', `at ${feet} sq ft, concrete`, 'each', 90 + 14 * feet, 3 + 0.16 * feet),
);

/** What is dug, drilled, poured, painted and set: every figure invented, none a contractor's. */
export const INVENTED_GROUND: readonly PriceRow[] = [
  line('saw cut', 'asphalt', 'ft', 0.9, 0.012),
  line('saw cut', 'concrete', 'ft', 1.8, 0.024),
  ...dug,
  ...[12, 36].map((wide) => line('bedding', `at ${wide} in wide, sand`, 'ft', (1.3 * wide) / 12, (0.02 * wide) / 12)),
  line('warning tape', 'buried line', 'ft', 0.08, 0.003),
  ...filled,
  line('spoil', 'cubic yard, hauled off', 'each', 28, 0.25),
  ...patched,
  line('core drill', 'through paving', 'each', 45, 1.2),
  ...pads,
  line('pedestal base', 'concrete, with anchor bolts', 'each', 120, 2.5),
  line('bollard', 'at a pedestal', 'each', 250, 1),
  line('bollard footing', 'concrete, 18 in across, 36 in deep', 'each', 60, 2),
  line('wheel stop', 'pinned', 'each', 48, 0.4),
  line('striping', 'lines and stencil of a stall', 'each', 32, 0.5),
  line('sign', 'charging only, on its post', 'each', 85, 0.9),
];
