import type { World } from '../simulated/world.ts';
import { lowerBound, type Multipliers } from './bound.ts';
import type { NewLinearProgram } from './linear-program.ts';
import { type Progress, pricesOf } from './optimum.ts';
import { leastFigure, Schedule } from './schedule.ts';

export interface BoundedCeiling {
  readonly ceiling: number;
  readonly ceilingBound: number;
}

const CLOSE = 1e-5;
const ROUNDS = 14;

/**
 * The least figure of a limit with which some schedule gives each car its target (kilowatt-hours), all else as it stands;
 * null where none does, for another limit is in the way.
 */
export function leastCeiling(
  world: World,
  limit: number,
  targets: Float64Array,
  newProgram: NewLinearProgram,
  tell: Progress = () => {},
): BoundedCeiling | null {
  const schedule = new Schedule(world, newProgram, limit);
  const { columns, program } = schedule;
  try {
    const count = columns.car.length;
    const least = leastFigure(world, limit);
    program.setCosts([...Array.from({ length: count }, () => 0), 1]);
    const first = program.addRows(
      columns.ofCar.map((at, car) => ({
        lower: targets[car]!,
        upper: Number.POSITIVE_INFINITY,
        at,
        by: at.map(() => world.kwh[car]!),
      })),
    );
    let ceilingBound = least;
    for (let round = 1; ; round++) {
      const solution = program.solve();
      if (solution.status !== 'optimal') return null;
      const ceiling = solution.columns[count]!;
      const by = scaled(world, limit, {
        ...pricesOf(schedule, solution),
        target: Float64Array.from(targets, (_, car) => Math.max(0, solution.prices[first + car]!)),
      });
      const bound = lowerBound(world, columns, () => 0, by.prices, targets, limit) + (1 - by.sum) * least;
      ceilingBound = Math.max(ceilingBound, bound);
      tell('ceiling', round, (ceiling - ceilingBound) / Math.max(ceiling, 1));
      if (
        ceiling - ceilingBound <= CLOSE * Math.max(ceiling, 1e-9) ||
        round === ROUNDS ||
        schedule.refine(solution) === 0
      )
        return { ceiling, ceilingBound };
    }
  } finally {
    program.dispose();
  }
}

/** Prices of the limit's rows may be one in all, since it costs one an ampere: scaled down where they are more. */
function scaled(world: World, limit: number, by: Multipliers): { readonly prices: Multipliers; readonly sum: number } {
  let sum = 0;
  world.rows.forEach((row, r) => {
    if (row.limit !== limit) return;
    const { re, im } = by.rows[r]!;
    for (let k = 0; k < re.length; k++) sum += Math.sqrt(re[k]! * re[k]! + im[k]! * im[k]!);
  });
  if (sum <= 1) return { prices: by, sum };
  const down = (values: Float64Array): Float64Array => values.map((value) => value / sum);
  return {
    prices: {
      need: down(by.need),
      ...(by.target === undefined ? {} : { target: down(by.target) }),
      rows: by.rows.map(({ re, im }) => ({ re: down(re), im: down(im) })),
      cords: down(by.cords),
    },
    sum: 1,
  };
}
