import type { Feeder, Rules } from '../../routing/site/site.ts';
import { ampacity } from '../circuits/ampacity.ts';
import { CONDUCTOR_SIZES, circularMils } from '../tables/lookup.ts';
import { NEC_2023 } from '../tables/nec-2023.ts';

/** Larger conductors are run in parallel sets instead. Common practice, no source. */
const LARGEST = '600';
/** Conductors in parallel are no smaller: NEC 310.10(G). */
const LEAST_PARALLEL = '1/0';
const MOST_SETS = 16;

/**
 * Conductors that carry a feeder's breaker, three to a raceway, where a site is as warm as its rules say, in as few
 * parallel sets as keep each at 600 kcmil or less. Voltage drop, and what it feeds, are checked where the plan is made.
 * RangeError for a breaker that is not over 0, or that no 16 sets carry.
 */
export function feederConductor(
  breakerAmps: number,
  { ambientC, terminalC, metal, insulation }: Pick<Rules, 'ambientC' | 'terminalC' | 'metal' | 'insulation'>,
): Feeder['conductor'] {
  const mils = (size: string): number => circularMils(NEC_2023, size);
  const carries = (size: string, sets: number): boolean => {
    const one = ampacity(NEC_2023, { conductor: { size, metal, insulation }, ambientC, currentCarrying: 3, terminalC });
    return one !== null && one.ampacity * sets >= breakerAmps;
  };
  for (let sets = 1; breakerAmps > 0 && sets <= MOST_SETS; sets++) {
    const size = CONDUCTOR_SIZES.find(
      (each) =>
        mils(each) <= mils(LARGEST) && (sets === 1 || mils(each) >= mils(LEAST_PARALLEL)) && carries(each, sets),
    );
    if (size !== undefined) return { size, metal, sets, insulation };
  }
  throw new RangeError(`no feeder conductors for a breaker of ${breakerAmps} A`);
}
