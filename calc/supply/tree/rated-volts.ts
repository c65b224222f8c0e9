import { kept } from '../../../routing/kept/kept.ts';
import type { Seats } from '../load-flow/seats.ts';
import type { Bus, Solved } from '../load-flow/sweep.ts';
import { ratedVolts } from './own-rating.ts';

/** Volts at their own rating, by seat, of chargers that a ceiling holds back in one solved case. */
export interface RatedVolts {
  /** Of the charger at a place. */
  readonly at: (place: number) => Float64Array;
}

/**
 * The same of any charger of a solved case. Chargers of one bus, on the same lines, of one rating have the same: it is
 * worked once, when one of them is asked for.
 */
export const ratedVoltsOf = kept(
  (solved: Solved, buses: readonly Bus[], seats: Seats, powerFactor: number): RatedVolts => {
    const { of, first } = classesOf(seats);
    const volts = first.map((one) => {
      const seat = { bus: seats.bus[one]!, lines: seats.lines[one]!, amps: seats.amps[one]! };
      return kept(() => ratedVolts(buses, solved, seat, powerFactor));
    });
    return { at: (place) => volts[of[place]!]!() };
  },
);

/** For each charger the number of its kind, and for each kind a charger of it. */
interface Classes {
  readonly of: Int32Array;
  readonly first: readonly number[];
}

const classesOf = kept((seats: Seats): Classes => {
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
  return { of, first };
});
