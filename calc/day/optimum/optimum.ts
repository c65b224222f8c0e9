import { holds, startOfStep } from '../clock.ts';
import { type DayCost, dayCost, energyPrices, stepsInInterval } from '../figures/cost.ts';
import { type Shortfall, shortfall } from '../simulated/outcome.ts';
import type { World } from '../simulated/world.ts';
import { lowerBound, type Multipliers } from './bound.ts';
import type { LinearSolution, NewLinearProgram } from './linear-program.ts';
import { type Relaxed, relaxedOf } from './relaxed.ts';
import { Schedule } from './schedule.ts';

/** The best that any schedule could give, with bounds that are worked anew from prices. Energy in kilowatt-hours. */
export interface Optimum extends Shortfall, DayCost {
  readonly energy: number;
  readonly energyBound: number;
  /** Absent where there is no tariff. */
  readonly costBound: number;
  readonly got: readonly number[];
  readonly relaxed: readonly Relaxed[];
  /** Amperes of each car in each step. */
  readonly amps: readonly Float64Array[];
  readonly proof: Proof;
}

/** Prices from which anyone can work the energy bound again. */
export interface Proof {
  readonly cars: readonly number[];
  readonly limits: Readonly<Record<string, Readonly<Record<string, readonly (readonly [number, number])[]>>>>;
  readonly cords: Readonly<Record<string, readonly number[]>>;
}

/** How close a bound comes to its schedule before no more corners are added. */
const CLOSE = 1e-5;
/** Of energy where a least cost is sought after it: the last kilowatt-hours may be the dearest by far. */
const CLOSER = 1e-6;
const ROUNDS = 14;

/** Told after each round: what is worked, the round, and how far apart schedule and bound still are. */
export type Progress = (what: 'energy' | 'cost' | 'ceiling' | 'more', round: number, gap: number) => void;

/**
 * The most energy that any schedule gives within the limits, and of the schedules that give it (to one part in a million)
 * the one that costs least. Current constant in a step; what the optimum leaves out of the rules' world is in `relaxed`.
 */
export function optimum(world: World, newProgram: NewLinearProgram, tell: Progress = () => {}): Optimum {
  const schedule = new Schedule(world, newProgram);
  try {
    const most = mostEnergy(world, schedule, tell);
    const best = world.input.tariff === null ? most : leastCost(world, schedule, most, tell);
    const amps = world.stays.map(() => new Float64Array(world.window.steps));
    const kw = new Float64Array(world.window.steps);
    schedule.columns.car.forEach((car, column) => {
      const step = schedule.columns.step[column]!;
      const current = best.solution.columns[column]!;
      amps[car]![step] = current;
      kw[step] = kw[step]! + current * world.kw[car]!;
    });
    const got = schedule.got(best.solution);
    return {
      energy: got.reduce((sum, one) => sum + one, 0),
      energyBound: most.energyBound,
      ...shortfall(world.need, got),
      ...dayCost(kw, world.window, world.input.tariff),
      costBound: best.costBound,
      got: Array.from(got),
      relaxed: relaxedOf(world),
      amps,
      proof: proofOf(world, schedule, most.by),
    };
  } finally {
    schedule.program.dispose();
  }
}

interface Most {
  readonly solution: LinearSolution;
  readonly energy: number;
  readonly energyBound: number;
  readonly costBound: number;
  readonly by: Multipliers;
}

function mostEnergy(world: World, schedule: Schedule, tell: Progress): Most {
  const { columns, program } = schedule;
  const cost = (column: number): number => -world.kwh[columns.car[column]!]!;
  program.setCosts(Float64Array.from(columns.car, (_, column) => cost(column)));
  const close = world.input.tariff === null ? CLOSE : CLOSER;
  let energyBound = Number.POSITIVE_INFINITY;
  let by: Multipliers | null = null;
  for (let round = 1; ; round++) {
    const solution = solved(schedule);
    const now = pricesOf(schedule, solution);
    const bound = -lowerBound(world, columns, cost, now);
    if (bound < energyBound) [energyBound, by] = [bound, now];
    const energy = schedule.got(solution).reduce((sum, one) => sum + one, 0);
    const gap = energyBound - energy;
    tell('energy', round, gap / Math.max(energy, 1));
    if (gap <= close * Math.max(energy, 1e-9) || round === ROUNDS || schedule.refine(solution) === 0)
      return { solution, energy, energyBound, costBound: 0, by: by ?? now };
  }
}

function leastCost(world: World, schedule: Schedule, most: Most, tell: Progress): Most {
  const { columns, program } = schedule;
  const { window, kwh, kw } = world;
  const tariff = world.input.tariff!;
  const prices = energyPrices(window, tariff);
  const cost = (column: number): number =>
    tariff.days * (prices[columns.step[column]!] ?? 0) * kwh[columns.car[column]!]!;
  const steps = stepsInInterval(window, tariff.interval);
  const demand = program.addColumns(
    tariff.demand.map(() => 0),
    tariff.demand.map(() => Number.POSITIVE_INFINITY),
  );
  const least = (1 - 1e-6) * most.energy;
  const energyRow = program.addRows([
    {
      lower: least,
      upper: Number.POSITIVE_INFINITY,
      at: Array.from(columns.car, (_, column) => column),
      by: Array.from(columns.car, (car) => kwh[car]!),
    },
  ]);
  const intervals = Array.from({ length: window.steps / steps }, (_, i) => i);
  const held = tariff.demand.map((span) => intervals.filter((i) => holds(span, startOfStep(window, i * steps))));
  const demandRows = held.map((within, s) =>
    program.addRows(
      within.map((i) => {
        const at = Array.from({ length: steps }, (_, j) => columns.ofStep[i * steps + j]!).flat();
        return {
          lower: Number.NEGATIVE_INFINITY,
          upper: 0,
          at: [...at, demand + s],
          by: [...at.map((column) => kw[columns.car[column]!]! / steps), -1],
        };
      }),
    ),
  );
  const costs = [...Array.from(columns.car, (_, column) => cost(column)), ...tariff.demand.map(({ price }) => price)];
  program.setCosts(costs);
  let costBound = 0;
  for (let round = 1; ; round++) {
    const solution = solved(schedule);
    const perStep = new Float64Array(window.steps);
    held.forEach((within, s) => {
      const found = within.map((_, i) => Math.max(0, -solution.prices[demandRows[s]! + i]!));
      const sum = found.reduce((a, b) => a + b, 0);
      // Together no more than the demand costs, or the bound would count money that nobody asks.
      const scale = sum > tariff.demand[s]!.price ? tariff.demand[s]!.price / sum : 1;
      within.forEach((i, at) => {
        for (let k = i * steps; k < (i + 1) * steps; k++) perStep[k] = perStep[k]! + (found[at]! * scale) / steps;
      });
    });
    const by: Multipliers = {
      ...pricesOf(schedule, solution),
      energy: { price: Math.max(0, solution.prices[energyRow]!), least },
      demand: (column) => perStep[columns.step[column]!]! * kw[columns.car[column]!]!,
    };
    costBound = Math.max(costBound, lowerBound(world, columns, cost, by));
    const total = costs.reduce((sum, one, column) => sum + one * solution.columns[column]!, 0);
    tell('cost', round, (total - costBound) / Math.max(total, 1));
    if (total - costBound <= CLOSE * Math.max(total, 1e-9) || round === ROUNDS || schedule.refine(solution) === 0)
      return { ...most, solution, costBound };
  }
}

export const pricesOf = (schedule: Schedule, solution: LinearSolution): Multipliers => ({
  need: schedule.needPrices(solution),
  rows: schedule.rowPrices(solution),
  cords: schedule.cordPrices(solution),
});

function solved(schedule: Schedule): LinearSolution {
  const solution = schedule.program.solve();
  if (solution.status !== 'optimal') throw new Error(`the schedule was not solved: ${solution.status}`);
  return solution;
}

function proofOf({ input, rows, window }: World, { columns }: Schedule, by: Multipliers): Proof {
  const limits: Record<string, Record<string, [number, number][]>> = {};
  rows.forEach(({ limit, name }, row) => {
    const id = input.limits[limit]!.id;
    const { re, im } = by.rows[row]!;
    limits[id] = { ...limits[id], [name]: Array.from(re, (one, k): [number, number] => [one, im[k]!]) };
  });
  const cords: Record<string, number[]> = {};
  columns.shared.forEach(({ charger, step }, i) => {
    const id = input.chargers[charger]!.id;
    cords[id] ??= Array.from({ length: window.steps }, () => 0);
    cords[id][step] = by.cords[i]!;
  });
  return { cars: Array.from(by.need), limits, cords };
}
