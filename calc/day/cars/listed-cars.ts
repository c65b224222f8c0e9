import type { ChargingDay } from '../../../routing/site/site.ts';
import { clockOf, dayWindow, minutesOf } from '../clock.ts';
import type { DayCar, DayInput } from '../day-input.ts';
import { stayOf } from './parking.ts';

/** A day with these cars, one by one; a population is gone with it. */
export function withCars(day: ChargingDay, cars: readonly DayCar[]): ChargingDay {
  const { population: _, ...rest } = day;
  return { ...rest, cars: [...cars] };
}

/** A day with one of its cars otherwise; those of a population are listed first. */
export const withCar = (day: ChargingDay, input: DayInput, place: number, patch: Partial<DayCar>): ChargingDay =>
  withCars(
    day,
    input.cars.map((car, i) => (i === place ? { ...car, ...patch } : car)),
  );

/** Minutes from the start of the window at which a car comes and goes. */
export interface Times {
  readonly arrives: number;
  readonly leaves: number;
}

/**
 * Times of a car moved by so many minutes: the whole stay, or one of its ends. It stays inside the window, and stands
 * there for one step at least.
 */
export function movedTimes(
  { arrives, leaves }: Times,
  part: 'stay' | 'arrives' | 'leaves',
  by: number,
  day: DayInput,
): Times {
  const { steps, step } = dayWindow(day.from, day.to, day.step)!;
  const end = steps * step;
  const within = (least: number, value: number, most: number): number => Math.min(most, Math.max(least, value));
  if (part === 'arrives') return { arrives: within(0, arrives + by, leaves - step), leaves };
  if (part === 'leaves') return { arrives, leaves: within(arrives + step, leaves + by, end) };
  const moved = within(-arrives, by, end - leaves);
  return { arrives: arrives + moved, leaves: leaves + moved };
}

/** The clock of a car at other times; a time that is as it was keeps its words, also where it lies outside the window. */
export function clocksAt(day: DayInput, place: number, times: Times): Pick<DayCar, 'arrive' | 'leave'> {
  const car = day.cars[place]!;
  const stood = stayOf(car, dayWindow(day.from, day.to, day.step)!);
  const from = minutesOf(day.from);
  return {
    arrive: times.arrives === stood.arrives ? car.arrive : clockOf(from + times.arrives),
    leave: times.leaves === stood.leaves ? car.leave : clockOf(from + times.leaves),
  };
}
