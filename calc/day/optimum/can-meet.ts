import { areMet, MET } from '../rules/rule-search.ts';
import type { World } from '../simulated/world.ts';
import { lowerBound } from './bound.ts';
import type { NewLinearProgram } from './linear-program.ts';
import { type Progress, pricesOf } from './optimum.ts';
import { Schedule } from './schedule.ts';

const ROUNDS = 14;

/** Whether some schedule gives each car its target: the most energy, with targets in place of needs, is their sum. */
export function canMeet(
  world: World,
  targets: Float64Array,
  newProgram: NewLinearProgram,
  tell: Progress = () => {},
): boolean {
  const asked: World = { ...world, need: targets };
  const schedule = new Schedule(asked, newProgram);
  const { columns, program } = schedule;
  try {
    const cost = (column: number): number => -world.kwh[columns.car[column]!]!;
    program.setCosts(Float64Array.from(columns.car, (_, column) => cost(column)));
    const all = targets.reduce((sum, one) => sum + one, 0);
    for (let round = 1; ; round++) {
      const solution = program.solve();
      if (solution.status !== 'optimal') return false;
      const got = schedule.got(solution);
      if (areMet(got, targets)) return true;
      const bound = -lowerBound(asked, columns, cost, pricesOf(schedule, solution));
      tell('more', round, (all - bound) / Math.max(all, 1));
      if (bound < all - MET || round === ROUNDS || schedule.refine(solution) === 0) return false;
    }
  } finally {
    program.dispose();
  }
}
