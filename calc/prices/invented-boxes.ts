import { METHODS } from '../../routing/site/schema/vocabulary.ts';
import { DEFAULT_TABLES } from '../tables/editions.ts';
import { tradeSizes } from '../tables/raceway-of.ts';
import { tradeSizeInches } from '../tables/sizes.ts';
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

/** Where it is listed for, as the takeoff has it after the size, and how much more it costs for that. */
const LOCATIONS = [
  ['', 1],
  [', damp location', 1.3],
  [', wet location', 1.9],
] as const;

const VOLUMES = [15, 30, 60, 120, 240, 480];
const LENGTHS = [6, 12, 24, 36, 48, 72];
const standard = DEFAULT_TABLES.metalBoxes.rows;
const boxes = LOCATIONS.flatMap(([location, times]) =>
  PLACES.flatMap(([item, where]) => {
    const at = where === '' ? '' : `, ${where.slice(0, -2)}`;
    const row = (spec: string, { material, hours }: { material: number; hours: number }): PriceRow =>
      each(item, spec, material * times, hours);
    return [
      ...standard.map(({ box, volume }) => row(`${where}${box}${location}`, byVolume(volume))),
      ...VOLUMES.map((size) => row(`at ${size} cu in${at}, box of${location}`, byVolume(size))),
      ...LENGTHS.map((size) => row(`at ${size} in long${at}, pull box${location}`, byLength(size))),
    ];
  }),
);
const covers = LOCATIONS.flatMap(([location, times]) => [
  ...standard.map(({ box, volume }) => each('cover', `${box}${location}`, (0.9 + 0.09 * volume) * times, 0.1)),
  ...VOLUMES.map((size) =>
    each('cover', `at ${size} cu in${location}`, (0.9 + 0.09 * size) * times, 0.1 + 0.0005 * size),
  ),
  ...LENGTHS.map((size) =>
    each('cover', `at ${size} in long${location}`, 0.22 * size ** 1.7 * times, 0.08 + 0.008 * size),
  ),
]);

/** Bodies and hangers by the raceway that they are for. */
const byRaceway = METHODS.flatMap((method) =>
  method === 'tray'
    ? [each('tray support', 'tray', 22, 0.5)]
    : tradeSizes(DEFAULT_TABLES, method).flatMap((tradeSize) => {
        const inches = tradeSizeInches(tradeSize);
        const spec = racewaySpec(method, tradeSize);
        return [
          ...LOCATIONS.map(([location, times]) =>
            each('conduit body', `${spec}${location}`, (11 * inches ** 1.5 + 4) * times, 0.25 + 0.2 * inches),
          ),
          each('hanger', spec, 5.5 + 3.2 * inches ** 1.2, 0.19 + 0.06 * inches),
        ];
      }),
);

/** Boxes, their covers, conduit bodies and hangers by their size: all invented. */
export const INVENTED_BOXES: readonly PriceRow[] = [...boxes, ...covers, ...byRaceway];
