import type { Seats } from '../load-flow/seats.ts';
import type { Bus, Solved } from '../load-flow/sweep.ts';
import { ratedVolts } from './own-rating.ts';

/** Volts at their own rating, by seat, of chargers that a ceiling holds back in one solved case. */
export interface RatedVolts {
  /** Of the charger at a place. */
  readonly at: (place: number) => Float64Array;
}

const known = new WeakMap<
  Solved,
  { readonly seats: Seats; readonly powerFactor: number; readonly volts: RatedVolts }
>();

/**
 * The same of any charger of a solved case. Chargers of one bus, on the same lines, of one rating have the same: it is
 * worked once, when one of them is asked for, and kept with the case.
 */
export function ratedVoltsOf(buses: readonly Bus[], seats: Seats, solved: Solved, powerFactor: number): RatedVolts {
  const last = known.get(solved);
  if (last !== undefined && last.seats === seats && last.powerFactor === powerFactor) return last.volts;
  const { of, first } = classesOf(seats);
  const worked: (Float64Array | undefined)[] = [];
  const volts: RatedVolts = {
    at: (place) => {
      const kind = of[place]!;
      const one = first[kind]!;
      worked[kind] ??= ratedVolts(
        buses,
        solved,
        { bus: seats.bus[one]!, lines: seats.lines[one]!, amps: seats.amps[one]! },
        powerFactor,
      );
      return worked[kind];
    },
  };
  known.set(solved, { seats, powerFactor, volts });
  return volts;
}

/** For each charger the number of its kind, and for each kind a charger of it. */
interface Classes {
  readonly of: Int32Array;
  readonly first: readonly number[];
}

const classes = new WeakMap<Seats, Classes>();

function classesOf(seats: Seats): Classes {
  const last = classes.get(seats);
  if (last !== undefined) return last;
  const numbers = new Map<string, number>();
  const first: number[] = [];
  const of = seats.bus.map((bus, i) => {
    const key = `${bus} ${seats.lines[i]} ${seats.amps[i]}`;
    let number = numbers.get(key);
    if (number === undefined) {
      number = first.length;
      numbers.set(key, number);
      first.push(i);
    }
    return number;
  });
  const made = { of, first };
  classes.set(seats, made);
  return made;
}
