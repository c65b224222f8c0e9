import { type DayCost, dayCost } from '../figures/cost.ts';
import type { Course } from './simulate.ts';
import type { World } from './world.ts';

/** Short by less than this, kilowatt-hours, is not short. */
export const SHORT = 1e-4;

/** What came of a day under a rule. Energy in kilowatt-hours. */
export interface Outcome extends DayCost {
  readonly energy: number;
  readonly short: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly got: readonly number[];
  /** Largest amperes (kilowatts of a limit in them) of the chargers in each row of each limit. */
  readonly peak: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

export interface Shortfall {
  readonly short: number;
  readonly carsShort: number;
  readonly worstShort: number;
}

/** What cars lack of what they asked for. */
export function shortfall(need: ArrayLike<number>, got: ArrayLike<number>): Shortfall {
  let [short, carsShort, worstShort] = [0, 0, 0];
  for (let car = 0; car < need.length; car++) {
    const lacks = Math.max(0, need[car]! - got[car]!);
    short += lacks;
    if (lacks > SHORT) carsShort++;
    worstShort = Math.max(worstShort, lacks);
  }
  return { short, carsShort, worstShort };
}

export function outcomeOf(world: World, { got, kw, rows }: Course): Outcome {
  const { input, need, window } = world;
  const peak: Record<string, Record<string, number>> = {};
  world.rows.forEach(({ limit, name }, row) => {
    const id = input.limits[limit]!.id;
    peak[id] = { ...peak[id], [name]: rows[row]!.reduce((most, amps) => Math.max(most, amps), 0) };
  });
  return {
    energy: got.reduce((sum, kwh) => sum + kwh, 0),
    ...shortfall(need, got),
    ...dayCost(kw, window, input.tariff),
    peak,
    got: Array.from(got),
  };
}
