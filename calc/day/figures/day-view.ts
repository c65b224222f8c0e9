import type { DayInput } from '../day-input.ts';
import type { Strategy } from '../rules/rules.ts';
import { cordsInStep } from '../simulated/cords.ts';
import { outcomeOf, SHORT } from '../simulated/outcome.ts';
import { type Course, simulate } from '../simulated/simulate.ts';
import { type World, withMost, worldOf } from '../simulated/world.ts';

/** A car of a day as it is drawn: where it stood, when it charged, and what came of it. */
export interface CarView {
  /** Place in the list. */
  readonly car: number;
  readonly charger: string;
  /** Minutes from the window's start. */
  readonly arrives: number;
  readonly leaves: number;
  /** The first step in which it has the cord; that of its end where it never has. */
  readonly cord: number;
  /** Amperes in each step. */
  readonly amps: ArrayLike<number>;
  /** Most amperes at this charger. */
  readonly max: number;
  readonly need: number;
  /** What the cord could give it without limits. */
  readonly most: number;
  readonly got: number;
  readonly isShort: boolean;
}

/** A day as it is drawn under one rule and one limit. */
export interface DayView {
  /** Minutes after midnight at which it begins, minutes of a step, and how many there are. */
  readonly from: number;
  readonly step: number;
  readonly steps: number;
  /** Of the limit: its fullest row in each step under the rule, and without management; what is left for charging. */
  readonly load: readonly number[];
  readonly unmanaged: readonly number[];
  readonly room: readonly number[];
  /** Kilowatts of each step. */
  readonly kw: readonly number[];
  readonly cars: readonly CarView[];
  readonly turnedAway: number;
  readonly energy: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly peakKw: number;
  readonly cost: number;
}

/**
 * A day under a rule, with another figure for one limit where `most` is given: what is drawn of it, and who leaves with
 * less than the cord could have given. Worked anew at each step of a ceiling that is dragged.
 */
export function dayView(input: DayInput, strategy: Strategy, limit: number, most: number | null): DayView {
  const base = worldOf(input);
  const world = most === null ? base : withMost(base, limit, most);
  const course = simulate(world, strategy, { keepAmps: true });
  const free = simulate(world, 'unmanaged');
  const { energy, peakKw, cost } = outcomeOf(world, course);
  const cords = firstSteps(world, course);
  const cars = world.stays.flatMap((stay, car): CarView[] => {
    const c = world.charger[car]!;
    if (c < 0) return [];
    const [need, could, got] = [world.need[car]!, free.got[car]!, course.got[car]!];
    return [
      {
        car,
        charger: input.chargers[c]!.id,
        arrives: stay.arrives,
        leaves: stay.leaves,
        cord: cords[car]!,
        amps: course.amps![car]!,
        max: world.max[car]!,
        need,
        most: could,
        got,
        isShort: could - got > SHORT,
      },
    ];
  });
  return {
    from: world.window.from,
    step: world.window.step,
    steps: world.window.steps,
    load: fullest(world, course, limit),
    unmanaged: fullest(world, free, limit),
    room: rooms(world, limit),
    kw: Array.from(course.kw),
    cars,
    turnedAway: world.charger.filter((c, car) => c < 0 && world.stays[car]!.first < world.stays[car]!.end).length,
    energy,
    carsShort: cars.filter(({ isShort }) => isShort).length,
    worstShort: cars.reduce((worst, { most: could, got }) => Math.max(worst, could - got), 0),
    peakKw,
    cost,
  };
}

/** The first step in which each car has its cord, the day gone through as it went. */
function firstSteps(world: World, { amps }: Course): number[] {
  const first = world.stays.map(({ end }) => end);
  const cords = cordsInStep(world);
  const got = new Float64Array(first.length);
  for (let step = 0; step < world.window.steps; step++)
    for (const car of cords(step, got)) {
      first[car] = Math.min(first[car]!, step);
      got[car]! += amps![car]![step]! * world.kwh[car]!;
    }
  return first;
}

function fullest({ rows, window }: World, course: Course, limit: number): number[] {
  return Array.from({ length: window.steps }, (_, step) =>
    rows.reduce((most, row, r) => (row.limit === limit ? Math.max(most, course.rows[r]![step]!) : most), 0),
  );
}

function rooms({ rows, window }: World, limit: number): number[] {
  return Array.from({ length: window.steps }, (_, step) =>
    rows.reduce(
      (least, row) => (row.limit === limit ? Math.min(least, row.room[step]!) : least),
      Number.POSITIVE_INFINITY,
    ),
  );
}
