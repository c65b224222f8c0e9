import * as v from 'valibot';
import type { Of } from '../kinds/kind.ts';
import { fraction, id, maybe, nonNegative, number, positive, text, told, wholePositive } from './schema-parts.ts';

/** Days of charging in the site file: when cars come, what they want, what they share. Times of the clock, no lengths. */

/** Most days of one file. */
export const MAX_DAYS = 20;
/** Most cars of one day. */
export const MAX_CARS = 20_000;

const clock = told(
  v.pipe(v.string(), v.regex(/^([01][0-9]|2[0-3]):[0-5][0-9]$/)),
  'Time of day, "HH:MM", 00:00 to 23:59.',
);

const span = { from: clock, to: told(clock, 'Not in the span; at or before `from` it is that of the next day.') };

/** Minutes of a step: a divisor of 60. */
export const DAY_STEPS = [1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60] as const;

export const POPULATION_KINDS = ['workplace', 'home', 'fleet', 'retail'] as const;
export const LIMIT_KINDS = ['sum', 'kw', 'lines', 'delta'] as const;
export const STRATEGY_NAMES = ['unmanaged', 'equal', 'first', 'deadline', 'laxity'] as const;

export const carSchema = v.strictObject({
  arrive: clock,
  leave: told(clock, 'At or before `arrive` it is that of the next day.'),
  kwh: told(v.pipe(nonNegative, v.maxValue(10_000)), 'Energy that it wants at the connector, kWh.'),
  maxKw: maybe(told(positive, 'Most that the car itself takes, kW.')),
  charger: maybe(told(id, 'The charger that it insists on.')),
  battery: maybe(told(positive, 'Size of its battery, kWh: only for a car that takes less as it fills.')),
  state: maybe(told(fraction, 'How full it comes, 0 to 1.')),
});

const table = told(
  v.pipe(v.array(v.strictTuple([fraction, nonNegative])), v.minLength(1), v.maxLength(200)),
  'Points of a distribution: the part of the cars at or below, from 0 up, and the value.',
);

export const populationSchema = v.strictObject({
  kind: v.picklist(POPULATION_KINDS),
  cars: told(v.pipe(wholePositive, v.maxValue(MAX_CARS)), 'How many.'),
  seed: told(v.pipe(number, v.integer()), 'The same seed gives the same cars, on any machine.'),
  arrive: maybe(told(table, 'Minutes after midnight.')),
  stay: maybe(told(table, 'Minutes.')),
  split: maybe(told(nonNegative, 'From this arrival on `lateStay` stands for `stay`, minutes after midnight.')),
  lateStay: maybe(table),
  kwh: maybe(table),
  maxKw: maybe(told(table, 'No value between its points.')),
});

export const otherLoadSchema = v.strictObject({
  ...span,
  amps: maybe(told(nonNegative, 'On every line.')),
  kw: maybe(told(nonNegative, 'Of a limit in kilowatts.')),
  A: maybe(nonNegative),
  B: maybe(nonNegative),
  C: maybe(nonNegative),
});

export const dayLimitSchema = v.strictObject({
  id,
  kind: told(
    v.picklist(LIMIT_KINDS),
    'What is held: the `sum` of amperes, `kw`, the current of each of the `lines`, or of the primary of a `delta` to wye transformer.',
  ),
  amps: maybe(positive),
  kw: maybe(told(positive, 'In place of `amps` where the kind is `kw`.')),
  ratio: maybe(told(positive, 'Of a `delta`: primary volts to secondary volts to ground.')),
  chargers: maybe(told(v.union([v.literal('all'), v.array(id)]), 'Those under it; all where absent.')),
  other: maybe(told(v.pipe(v.array(otherLoadSchema), v.maxLength(200)), 'What else draws on it at some hours.')),
});

const priced = v.pipe(v.array(v.strictObject({ ...span, price: nonNegative })), v.maxLength(200));

export const tariffSchema = v.strictObject({
  energy: told(priced, 'Money per kWh; the first that holds the start of a step rules it.'),
  demand: maybe(told(priced, 'Money per kW of the highest interval that begins in it.')),
  interval: maybe(
    told(v.pipe(wholePositive, v.maxValue(1440)), 'Minutes over which demand is averaged; 15 where absent.'),
  ),
  days: maybe(told(v.pipe(wholePositive, v.maxValue(366)), 'Such days in a billing period; 21 where absent.')),
});

/** What a day has in the site file and in a single calculation alike. */
export const dayFields = {
  from: clock,
  to: told(clock, 'At or before `from` it is that of the next day; equal is a whole day.'),
  step: maybe(told(v.picklist(DAY_STEPS), 'Minutes; 15 where absent.')),
  cars: maybe(v.pipe(v.array(carSchema), v.maxLength(MAX_CARS))),
  population: maybe(told(populationSchema, 'Cars made from a seed, in place of `cars`.')),
  hold: maybe(
    told(v.picklist(['stay', 'done']), 'Whether a car keeps the cord for its stay, or hands it on when it is full.'),
  ),
  taper: maybe(
    told(
      v.strictObject({ above: v.pipe(fraction, v.maxValue(0.999)), last: fraction }),
      'A car with a battery takes less above some charge: all of it up to `above`, the part `last` when full.',
    ),
  ),
  tariff: maybe(tariffSchema),
} as const;

export const daySearchSchema = v.strictObject({
  ceiling: maybe(told(id, 'The limit whose least figure is looked for.')),
  share: maybe(
    told(
      v.pipe(fraction, v.gtValue(0)),
      'The part of what its cord could give it that a car is to get; 1 where absent.',
    ),
  ),
  more: maybe(told(v.boolean(), 'Whether to look for how many chargers could be added.')),
});

export const daySchema = v.strictObject({
  id,
  name: maybe(text),
  ...dayFields,
  limits: maybe(told(v.pipe(v.array(dayLimitSchema), v.maxLength(200)), 'In place of those read from the supply.')),
  strategy: maybe(told(v.picklist(STRATEGY_NAMES), 'The rule by which the lot is really run.')),
  search: maybe(daySearchSchema),
});

export type ChargingDay = Of<typeof daySchema>;
export type DayFields = Pick<ChargingDay, keyof typeof dayFields>;
export type DayLimitFields = Of<typeof dayLimitSchema>;
