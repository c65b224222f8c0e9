import type { LimitSums } from '../simulated/limit-sums.ts';
import type { World } from '../simulated/world.ts';

/** What a rule knows at the start of a step. Arrays are by car; only those of holders mean anything. */
export interface Moment {
  readonly world: World;
  readonly step: number;
  /** Cars that have a cord and are not full. */
  readonly holders: readonly number[];
  readonly got: Float64Array;
  /** Most that a car may take in this step, amperes. */
  readonly cap: Float64Array;
  /** Least that it takes, if any. */
  readonly low: Float64Array;
  /** All zero when the rule is asked. */
  readonly sums: LimitSums;
}

/** A rule of load management: writes the amperes of each holder into `amps`. */
export type DayRule = (moment: Moment, amps: Float64Array) => void;

/** Within this, amperes, a car may begin though its least does not quite fit. */
export const HAIR = 1e-6;
