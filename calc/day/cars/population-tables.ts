/** Points of a distribution: the part of cars at or below, and the value. */
export type SharePoints = readonly (readonly [part: number, value: number])[];

/** How the cars of a lot come, stay and want. */
export interface Tables {
  /** Minutes after midnight. */
  readonly arrive: SharePoints;
  /** Minutes. */
  readonly stay: SharePoints;
  /** From this arrival on `lateStay` stands for `stay`. */
  readonly split?: number;
  readonly lateStay?: SharePoints;
  readonly kwh: SharePoints;
  /** The car's own most, kilowatts: no value between its points. */
  readonly maxKw: SharePoints;
}

export const POPULATIONS = ['workplace', 'home', 'fleet', 'retail'] as const;

/** Common practice, no source. */
const CARS: SharePoints = [
  [0, 3.3],
  [0.1, 6.6],
  [0.35, 7.2],
  [0.7, 9.6],
  [0.8, 11.5],
  [0.97, 19.2],
];

/**
 * Workplace times and energy: quantiles of 28,810 weekday sessions, 2018 to 2021, of an open workplace dataset (Lee, Li
 * and Low 2019), ends rounded. All else: common practice, no source; counts of the site are better.
 */
export const POPULATION_TABLES: Readonly<Record<(typeof POPULATIONS)[number], Tables>> = {
  workplace: {
    arrive: [
      [0, 240],
      [0.05, 345],
      [0.1, 365],
      [0.25, 407],
      [0.5, 452],
      [0.75, 691],
      [0.9, 902],
      [0.95, 966],
      [1, 1200],
    ],
    stay: [
      [0, 10],
      [0.05, 194],
      [0.1, 257],
      [0.25, 421],
      [0.5, 550],
      [0.75, 595],
      [0.9, 642],
      [0.95, 676],
      [1, 960],
    ],
    split: 600,
    lateStay: [
      [0, 10],
      [0.05, 58],
      [0.1, 82],
      [0.25, 126],
      [0.5, 202],
      [0.75, 295],
      [0.9, 382],
      [0.95, 439],
      [1, 720],
    ],
    kwh: [
      [0, 0.5],
      [0.05, 3.3],
      [0.1, 5],
      [0.25, 7],
      [0.5, 11.7],
      [0.75, 18.3],
      [0.9, 31.6],
      [0.95, 39.3],
      [1, 68.6],
    ],
    maxKw: CARS,
  },
  home: {
    arrive: [
      [0, 840],
      [0.1, 960],
      [0.25, 1020],
      [0.5, 1100],
      [0.75, 1200],
      [0.9, 1290],
      [1, 1410],
    ],
    stay: [
      [0, 300],
      [0.1, 540],
      [0.25, 660],
      [0.5, 760],
      [0.75, 860],
      [0.9, 960],
      [1, 1200],
    ],
    kwh: [
      [0, 1],
      [0.1, 3],
      [0.25, 6],
      [0.5, 10],
      [0.75, 18],
      [0.9, 32],
      [1, 60],
    ],
    maxKw: CARS,
  },
  fleet: {
    arrive: [
      [0, 900],
      [0.1, 960],
      [0.25, 990],
      [0.5, 1035],
      [0.75, 1080],
      [0.9, 1140],
      [1, 1230],
    ],
    stay: [
      [0, 480],
      [0.1, 600],
      [0.25, 690],
      [0.5, 750],
      [0.75, 810],
      [0.9, 870],
      [1, 960],
    ],
    kwh: [
      [0, 5],
      [0.1, 15],
      [0.25, 25],
      [0.5, 38],
      [0.75, 55],
      [0.9, 75],
      [1, 110],
    ],
    maxKw: [
      [0, 9.6],
      [0.3, 11.5],
      [0.8, 19.2],
    ],
  },
  retail: {
    arrive: [
      [0, 480],
      [0.1, 600],
      [0.25, 690],
      [0.5, 840],
      [0.75, 990],
      [0.9, 1110],
      [1, 1260],
    ],
    stay: [
      [0, 10],
      [0.1, 25],
      [0.25, 40],
      [0.5, 65],
      [0.75, 110],
      [0.9, 170],
      [1, 360],
    ],
    kwh: [
      [0, 0.5],
      [0.1, 2],
      [0.25, 4],
      [0.5, 7],
      [0.75, 11],
      [0.9, 16],
      [1, 40],
    ],
    maxKw: CARS,
  },
};
