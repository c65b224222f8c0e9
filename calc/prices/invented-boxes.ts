import { METHODS } from '../../routing/site/schema/vocabulary.ts';
import { DEFAULT_TABLES } from '../tables/editions.ts';
import { tradeSizeInches, tradeSizes } from '../tables/lookup.ts';
import type { PriceRow } from './price-list.ts';
import { racewaySpec } from './spec.ts';

const each = (item: string, spec: string, material: number, hours: number): PriceRow => ({
  item,
  spec,
  unit: 'each',
  material: Math.round(material * 100) / 100,
  hours: Math.round(hours * 1000) / 1000,
});

/** Where a box is, as the takeoff has it before its size, and what the place takes beside the box. */
const PLACES = [
  ['junction box', 'at the drop, '],
  ['junction box', 'on the raceway, '],
  ['pull point', ''],
] as const;

/** A box by its volume, and one of a length; its cover. All invented. */
const byVolume = (cubicInches: number) => ({
  material: 2.2 + 0.35 * cubicInches ** 1.05,
  hours: 0.45 + 0.007 * cubicInches,
});
const byLength = (inches: number) => ({ material: 0.75 * inches ** 1.75, hours: 0.5 + 0.055 * inches });

const VOLUMES = [15, 30, 60, 120, 240, 480];
const LENGTHS = [6, 12, 24, 36, 48, 72];
const boxes = PLACES.flatMap(([item, where]) => {
  const standard = DEFAULT_TABLES.metalBoxes.rows.map(({ box, volume }) => {
    const { material, hours } = byVolume(volume);
    return each(item, `${where}${box}`, material, hours);
  });
  const words = where.slice(0, -2);
  const condition = (kind: string): string => (words === '' ? `, ${kind}` : `, ${words}, ${kind}`);
  return [
    ...standard,
    ...VOLUMES.map((size) => {
      const { material, hours } = byVolume(size);
      return each(item, `at ${size} cu in${condition('box of')}`, material, hours);
    }),
    ...LENGTHS.map((size) => {
      const { material, hours } = byLength(size);
      return each(item, `at ${size} in long${condition('pull box')}`, material, hours);
    }),
  ];
});
const covers = [
  ...DEFAULT_TABLES.metalBoxes.rows.map(({ box, volume }) => each('cover', box, 0.9 + 0.09 * volume, 0.1)),
  ...VOLUMES.map((size) => each('cover', `at ${size} cu in`, 0.9 + 0.09 * size, 0.1 + 0.0005 * size)),
  ...LENGTHS.map((size) => each('cover', `at ${size} in long`, 0.22 * size ** 1.7, 0.08 + 0.008 * size)),
];

/** Bodies and hangers by the raceway that they are for. */
const byRaceway = METHODS.flatMap((method) =>
  method === 'tray'
    ? [each('tray support', 'tray', 22, 0.5)]
    : tradeSizes(DEFAULT_TABLES, method).flatMap((tradeSize) => {
        const inches = tradeSizeInches(tradeSize);
        const spec = racewaySpec(method, tradeSize);
        return [
          each('conduit body', spec, 11 * inches ** 1.5 + 4, 0.25 + 0.2 * inches),
          each('hanger', spec, 5.5 + 3.2 * inches ** 1.2, 0.19 + 0.06 * inches),
        ];
      }),
);

/** Boxes, their covers, conduit bodies and hangers by their size: all invented. */
export const INVENTED_BOXES: readonly PriceRow[] = [...boxes, ...covers, ...byRaceway];
