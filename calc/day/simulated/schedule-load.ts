import type { DayInput } from '../day-input.ts';
import { LimitSums } from './limit-sums.ts';
import { worldOf } from './world.ts';

/** What a schedule draws in each step. */
export interface ScheduleLoad {
  /** Of one limit its fullest row, amperes (kilowatts of a limit in them). */
  readonly load: readonly number[];
  readonly kw: readonly number[];
}

/** The load of a schedule of any making, such as the best there could be. `amps` of each car in each step. */
export function scheduleLoad(day: DayInput, amps: readonly ArrayLike<number>[], limit: number): ScheduleLoad {
  const world = worldOf(day);
  const sums = new LimitSums(world);
  const [load, kw]: [number[], number[]] = [[], []];
  for (let step = 0; step < world.window.steps; step++) {
    sums.clear();
    let power = 0;
    amps.forEach((steps, car) => {
      if (world.charger[car]! < 0) return;
      sums.add(car, steps[step]!);
      power += steps[step]! * world.kw[car]!;
    });
    kw.push(power);
    load.push(world.rows.reduce((most, row, r) => (row.limit === limit ? Math.max(most, sums.magnitude(r)) : most), 0));
  }
  return { load, kw };
}
