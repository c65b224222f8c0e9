import type { DayInput } from '../day-input.ts';
import { canMeet } from '../optimum/can-meet.ts';
import { leastCeiling } from '../optimum/least-ceiling.ts';
import type { NewLinearProgram } from '../optimum/linear-program.ts';
import { type Optimum, optimum, type Progress } from '../optimum/optimum.ts';
import { ceilingOfRule, moreUnderRule, mostCopies, targetsOf } from '../rules/rule-search.ts';
import { STRATEGIES, type Strategy } from '../rules/rules.ts';
import { type ChargedCar, chargedCars } from './by-rules.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { simulate } from './simulate.ts';
import { worldOf } from './world.ts';

/** What is asked of a day. */
export interface ChargeWish {
  readonly strategies: readonly Strategy[];
  readonly optimum: boolean;
  readonly search: { readonly ceiling?: string; readonly share: number; readonly more: boolean };
  /** Whether amperes of each car in each step are wanted. */
  readonly amps: boolean;
}

export interface Charge {
  readonly cars: readonly ChargedCar[];
  readonly strategies: Readonly<Partial<Record<Strategy, StrategyOutcome>>>;
  readonly optimum: BestOutcome | null;
}

export interface StrategyOutcome extends Outcome {
  /** Null where no figure does; absent where it was not asked for. */
  readonly ceiling?: number | null;
  readonly more?: number | null;
  readonly amps?: readonly Float64Array[];
}

export interface BestOutcome extends Optimum {
  readonly ceiling?: number | null;
  readonly ceilingBound?: number;
  readonly more?: number | null;
}

/** More unknowns than this, cars times their steps, are too many for the best schedule; the rules take any. */
export const MOST_UNKNOWNS = 40_000;

/** Whether a day is small enough for its best schedule. */
export function isSolvable(day: DayInput): boolean {
  const { stays, charger } = worldOf(day);
  return (
    stays.reduce((sum, { first, end }, i) => (charger[i]! < 0 ? sum : sum + Math.max(0, end - first)), 0) <=
    MOST_UNKNOWNS
  );
}

/**
 * A day of charging under the rules, beside the best that any schedule could give: what each car gets, peaks, cost, the
 * least figure of a limit with which all get their share, and how many more chargers there could be.
 */
export function charge(
  day: DayInput,
  wish: ChargeWish,
  newProgram: NewLinearProgram | null,
  tell: Progress = () => {},
): Charge {
  const world = worldOf(day);
  const unmanaged = simulate(world, 'unmanaged');
  const { ceiling, share, more } = wish.search;
  const limit = day.limits.findIndex(({ id }) => id === ceiling);
  const targets = targetsOf(unmanaged, share);
  const least = limit < 0 || newProgram === null ? null : leastCeiling(world, limit, targets, newProgram, tell);
  const strategies: Partial<Record<Strategy, StrategyOutcome>> = {};
  for (const strategy of STRATEGIES) {
    if (!wish.strategies.includes(strategy)) continue;
    const course = simulate(world, strategy, { keepAmps: wish.amps });
    const rule = strategy !== 'unmanaged';
    strategies[strategy] = {
      ...outcomeOf(world, course),
      ...(rule &&
        limit >= 0 && {
          ceiling:
            least === null
              ? null
              : ceilingOfRule(world, limit, strategy, targets, { unmanaged, leastOfAny: least.ceiling }),
        }),
      ...(rule && more && { more: moreUnderRule(world, strategy, share) }),
      ...(course.amps !== null && { amps: course.amps }),
    };
  }
  const best =
    wish.optimum && newProgram !== null
      ? {
          ...optimum(world, newProgram, tell),
          ...(limit >= 0 && { ceiling: least?.ceiling ?? null, ...(least && { ceilingBound: least.ceilingBound }) }),
          ...(more && {
            more: mostCopies(world, (copied) =>
              canMeet(copied, targetsOf(simulate(copied, 'unmanaged'), share), newProgram, tell),
            ),
          }),
        }
      : null;
  return {
    cars: chargedCars(world, unmanaged),
    strategies,
    optimum: best,
  };
}
