import type { PriceRow } from './price-list.ts';

/** Points of a curve: a size, dollars and hours there. */
type Points = readonly (readonly [size: number, material: number, hours: number])[];

/** A curve in a unit, and how much more what is bought of some kind costs; conditions are words that the spec has. */
const curve = (
  item: string,
  unit: string,
  points: Points,
  kinds: readonly (readonly [words: string, times: number])[] = [['', 1]],
): PriceRow[] =>
  kinds.flatMap(([words, times]) =>
    points.map(
      ([size, material, hours]): PriceRow => ({
        item,
        spec: `at ${size} ${unit}${words && `, ${words}`}`,
        unit: 'each',
        material: Math.round(material * times),
        hours: Math.round(hours * (1 + (times - 1) / 3) * 100) / 100,
      }),
    ),
  );

/** Gear of a higher voltage costs more. */
const VOLTS = [
  ['', 1],
  ['480 V', 1.3],
  ['600 V', 1.4],
] as const;

const SERVICE: Points = [
  [100, 1400, 9],
  [200, 2300, 13],
  [400, 5200, 20],
  [800, 12500, 34],
  [1200, 19500, 46],
  [2000, 36000, 70],
  [4000, 84000, 130],
];
const SWITCHBOARD: Points = [
  [400, 6200, 18],
  [600, 9500, 24],
  [800, 13000, 30],
  [1200, 20500, 42],
  [2000, 38000, 64],
  [3000, 61000, 90],
  [4000, 88000, 116],
  [5000, 118000, 140],
];
const PANELBOARD: Points = [
  [60, 480, 6],
  [100, 720, 8],
  [125, 900, 9],
  [225, 1500, 12],
  [400, 2900, 17],
  [600, 4700, 22],
  [800, 6900, 27],
  [1200, 12500, 36],
];
const DISCONNECT: Points = [
  [30, 150, 1.6],
  [60, 230, 2.2],
  [100, 420, 3],
  [200, 820, 4.5],
  [400, 2000, 8],
  [600, 3500, 11],
  [800, 5600, 14],
  [1200, 9600, 20],
];
const INVERTER: Points = [
  [40, 2600, 7],
  [100, 5200, 11],
  [200, 9800, 18],
  [400, 18500, 30],
];
const DRY: Points = [
  [15, 1300, 8],
  [30, 2100, 10],
  [45, 2700, 12],
  [75, 3900, 14],
  [112.5, 5400, 17],
  [150, 6800, 20],
  [225, 10200, 25],
  [300, 14000, 30],
  [500, 25000, 42],
  [750, 39000, 54],
  [1000, 54000, 66],
];
const MEDIUM: Points = [
  [75, 14000, 24],
  [150, 18500, 28],
  [300, 26000, 34],
  [500, 34000, 40],
  [1000, 52000, 54],
  [1500, 68000, 64],
  [2500, 98000, 82],
  [5000, 170000, 120],
];
const CHARGER: Points = [
  [16, 420, 1.2],
  [24, 540, 1.3],
  [32, 690, 1.5],
  [40, 820, 1.6],
  [48, 980, 1.8],
  [80, 1950, 2.6],
];
const CORD: Points = [
  [16, 120, 0.4],
  [32, 190, 0.5],
  [48, 290, 0.6],
  [80, 520, 0.8],
];
/** Usable feet of cord, and how much it costs beside one of 15 to 20 ft. */
const CORD_FEET = [
  ['0 to 15 ft', 0.85],
  ['15 to 20 ft', 1],
  ['20 to 25 ft', 1.2],
  ['25 to 30 ft', 1.4],
  ['30 to 60 ft', 1.8],
] as const;

/** Equipment, chargers and cords by their size: smooth curves over ratings, all invented. */
export const INVENTED_GEAR: readonly PriceRow[] = [
  ...curve('service equipment', 'A bus', SERVICE, VOLTS),
  ...curve('switchboard', 'A bus', SWITCHBOARD, VOLTS),
  ...curve('panelboard', 'A bus', PANELBOARD, VOLTS),
  ...curve('disconnect', 'A bus', DISCONNECT, VOLTS),
  ...curve('disconnect', 'A', DISCONNECT, [
    ['lockable', 1],
    ['lockable, 480 V', 1.3],
  ]),
  ...curve('inverter', 'A bus', INVERTER, VOLTS),
  ...curve('transformer', 'kVA', DRY, [
    ['', 1],
    ['0 to 1000 V', 1],
  ]),
  ...curve('transformer', 'kVA', MEDIUM, [['1001 to 40000 V', 1]]),
  ...curve('charging module', 'A', CHARGER, [
    ['single-phase', 1],
    ['three-phase', 1.5],
  ]),
  ...curve(
    'cord',
    'A',
    CORD,
    CORD_FEET.map(([feet, times]) => [`${feet} usable`, times] as const),
  ),
];
