import type { Finding } from '../../routing/site/rules/finding.ts';
import type { DayLimitFields } from '../../routing/site/schema/day-schema.ts';

/** A day of charging: what each car gets under each rule. Energy in kilowatt-hours. */
export interface PlannedDay {
  readonly id: string;
  /** The rule that the lot is run by. */
  readonly strategy: DayStrategy;
  readonly limits: readonly DayLimitFields[];
  readonly cars: readonly {
    readonly arrive: string;
    readonly leave: string;
    readonly need: number;
    /** What its cord could give it without any limit. */
    readonly most: number;
    /** Null where it found no free stall. */
    readonly charger: string | null;
  }[];
  /** Empty where the day could not be worked; then a finding says why. */
  readonly strategies: Readonly<Partial<Record<DayStrategy, PlannedCharging>>>;
  readonly findings: readonly Finding[];
}

export type DayStrategy = 'unmanaged' | 'equal' | 'first' | 'deadline' | 'laxity';

export interface PlannedCharging {
  readonly energy: number;
  readonly short: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly got: readonly number[];
  readonly peakKw: number;
  /** The chargers' own load, by limit and row: amperes, or kilowatts where the limit is in kilowatts. */
  readonly peak: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly energyCost: number;
  readonly demandCost: number;
  readonly cost: number;
}
