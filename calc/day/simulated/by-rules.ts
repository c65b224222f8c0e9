import type { DayInput } from '../day-input.ts';
import { STRATEGIES, type Strategy } from '../rules/rules.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { type Course, simulate } from './simulate.ts';
import { type World, worldOf } from './world.ts';

export interface ChargedCar {
  readonly arrive: string;
  readonly leave: string;
  /** Kilowatt-hours asked for, and the most that the cord could give. */
  readonly need: number;
  readonly most: number;
  readonly charger: string | null;
}

/** The cars of a day as they are told: what each asks, what its cord could give it, and where it stood. */
export const chargedCars = ({ input, charger }: World, unmanaged: Course): ChargedCar[] =>
  input.cars.map(({ arrive, leave, kwh }, i) => ({
    arrive,
    leave,
    need: kwh,
    most: unmanaged.got[i]!,
    charger: charger[i]! < 0 ? null : input.chargers[charger[i]!]!.id,
  }));

export interface ByRules {
  readonly cars: readonly ChargedCar[];
  readonly strategies: Readonly<Record<Strategy, Outcome>>;
}

/** A day under each rule, without the searches and the best schedule: what a plan holds, so that it stays live. */
export function byRules(day: DayInput): ByRules {
  const world = worldOf(day);
  const courses = STRATEGIES.map((name) => [name, simulate(world, name)] as const);
  return {
    cars: chargedCars(world, courses[0]![1]),
    strategies: Object.fromEntries(
      courses.map(([name, course]) => [name, outcomeOf(world, course)]),
    ) as ByRules['strategies'],
  };
}
