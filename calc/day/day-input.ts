import type { LIMIT_KINDS } from '../../routing/site/schema/day-schema.ts';
import type { ClockSpan } from './clock.ts';

/** The lines that a charger hangs on: two of three, or all. */
export type ChargerLines = 'AB' | 'BC' | 'CA' | 'ABC';

export interface DayCharger {
  readonly id: string;
  readonly lines: ChargerLines;
  /** Most it gives, amperes. */
  readonly amps: number;
  /** Line to line. */
  readonly volts: number;
  /** How many stalls its cord serves. */
  readonly stalls: number;
  /** Least that it gives, amperes, where it gives any; 0: no least. */
  readonly minAmps: number;
}

/** What else draws on a limit at some hours: on every row (`amps`, or `kw` of a limit in kilowatts), or line by line. */
export interface LoadOnLimit extends ClockSpan {
  readonly amps?: number;
  readonly kw?: number;
  readonly A?: number;
  readonly B?: number;
  readonly C?: number;
}

/**
 * What chargers share: `sum` of their amperes, `kw`, the current in each of the `lines` they hang on, or in each line of the
 * primary of a `delta` to wye transformer.
 */
export interface DayLimit {
  readonly id: string;
  readonly kind: (typeof LIMIT_KINDS)[number];
  /** Amperes, or kilowatts of a limit in `kw`. */
  readonly most: number;
  /** Of a `delta`: primary volts to secondary volts to ground. */
  readonly ratio: number;
  readonly chargers: readonly string[] | 'all';
  readonly other: readonly LoadOnLimit[];
}

/** A car: when it comes and goes ("HH:MM"), and what it wants at the connector. */
export interface DayCar {
  readonly arrive: string;
  readonly leave: string;
  readonly kwh: number;
  /** The most that the car itself takes. */
  readonly maxKw?: number;
  /** The charger it insists on. */
  readonly charger?: string;
  /** Kilowatt-hours; only for a car that takes less as it fills. */
  readonly battery?: number;
  /** How full it comes, 0 to 1. */
  readonly state?: number;
}

/** How a car takes less above some state of charge: all of it up to `above`, `last` of it when full. */
export interface Taper {
  readonly above: number;
  readonly last: number;
}

export interface PricedSpan extends ClockSpan {
  readonly price: number;
}

export interface Tariff {
  /** Money per kilowatt-hour; the first span that holds a step's start rules it. */
  readonly energy: readonly PricedSpan[];
  /** Money per kilowatt of the highest interval that begins in the span, once a billing period. */
  readonly demand: readonly PricedSpan[];
  /** Minutes over which demand is averaged. */
  readonly interval: number;
  /** Such days in a billing period. */
  readonly days: number;
}

export interface DayInput {
  readonly from: string;
  readonly to: string;
  /** Minutes. */
  readonly step: number;
  readonly chargers: readonly DayCharger[];
  readonly limits: readonly DayLimit[];
  readonly cars: readonly DayCar[];
  /** Whether a car keeps the cord for its `stay`, or hands it on when it is `done`. */
  readonly hold: 'stay' | 'done';
  readonly taper: Taper | null;
  readonly tariff: Tariff | null;
}
