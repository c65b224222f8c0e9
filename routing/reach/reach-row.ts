import type { Reach, ReachCase } from './reach-result.ts';
import { type LikelyCase, reachCases } from './stall-reach.ts';

/**
 * Reach of one cord to one stall, of which there are thousands, each of many cases that few ask for. A getter of its own in
 * each would make each an object of its own shape, ten times as dear and of three times the size.
 */
export class ReachRow implements Reach {
  readonly charger: string;
  readonly stall: string;
  readonly coverage: number;
  readonly worst: Reach['worst'];
  readonly overVehicle: string | null;
  readonly #likely: readonly LikelyCase[];
  readonly #needed: readonly number[];
  #cases: readonly ReachCase[] | null = null;

  /** @param needed feet of each of the likely cases */
  constructor(
    charger: string,
    stall: string,
    coverage: number,
    worst: Reach['worst'],
    overVehicle: string | null,
    likely: readonly LikelyCase[],
    needed: readonly number[],
  ) {
    this.charger = charger;
    this.stall = stall;
    this.coverage = coverage;
    this.worst = worst;
    this.overVehicle = overVehicle;
    this.#likely = likely;
    this.#needed = needed;
  }

  get cases(): readonly ReachCase[] {
    this.#cases ??= reachCases(this.#likely, this.#needed, this.worst.available);
    return this.#cases;
  }

  /** With the cases, which are not its own property. */
  toJSON(): Reach {
    const { charger, stall, coverage, worst, cases, overVehicle } = this;
    return { charger, stall, coverage, worst, cases, overVehicle };
  }
}
