import { park, type Stay, stayOf } from '../cars/parking.ts';
import { type DayWindow, dayWindow, holds, startOfStep } from '../clock.ts';
import type { DayInput, DayLimit, LoadOnLimit } from '../day-input.ts';
import { currentIn, kwPerAmp, namesOfRows, type UnitCurrent } from './phasors.ts';

/** One row of a limit: a sum of phasors whose magnitude stays within `room`. */
export interface LimitRow {
  readonly limit: number;
  readonly name: string;
  /** What is left for the chargers in each step. */
  readonly room: Float64Array;
  /** What else draws on it in each step. */
  readonly other: Float64Array;
}

/** The rows that a charger is in, and what one ampere of it is in each. */
export interface Touch {
  readonly rows: Int32Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A day made ready: all that a rule needs to know of cars and limits, in arrays. Cars are counted as they are listed. */
export interface World {
  readonly input: DayInput;
  readonly window: DayWindow;
  readonly stays: readonly Stay[];
  /** The charger of each car, -1 for none. */
  readonly charger: Int32Array;
  readonly need: Float64Array;
  /** Most amperes of each car at its charger. */
  readonly max: Float64Array;
  readonly minAmps: Float64Array;
  /** Kilowatt-hours of one ampere in one step, of each car. */
  readonly kwh: Float64Array;
  readonly kw: Float64Array;
  readonly touch: readonly Touch[];
  readonly rows: readonly LimitRow[];
}

/** A day made ready. Throws where the window is no whole number of steps: input is looked through before. */
export function worldOf(input: DayInput): World {
  const { cars, chargers, limits } = input;
  const window = dayWindow(input.from, input.to, input.step);
  if (window === null) throw new Error('the window is no whole number of steps');
  const stays = cars.map((car) => stayOf(car, window));
  const charger = park(cars, stays, chargers);
  const rows = limits.flatMap((limit, i) => rowsFor(limit, i, window));
  const touches = touchesOf(input, rows);
  const of = <T>(make: (car: number, charger: number) => T, none: T): T[] =>
    cars.map((_, i) => (charger[i]! < 0 ? none : make(i, charger[i]!)));
  const kw = Float64Array.from(of((_, c) => kwPerAmp(chargers[c]!.lines, chargers[c]!.volts), 0));
  return {
    input,
    window,
    stays,
    charger,
    need: Float64Array.from(cars, (car) => car.kwh),
    max: Float64Array.from(
      of((i, c) => Math.min(chargers[c]!.amps, (cars[i]!.maxKw ?? Number.POSITIVE_INFINITY) / kw[i]!), 0),
    ),
    minAmps: Float64Array.from(of((_, c) => chargers[c]!.minAmps, 0)),
    kw,
    kwh: kw.map((one) => (one * window.step) / 60),
    touch: of((_, c) => touches[c]!, UNTOUCHED),
    rows,
  };
}

/** The same day with another figure for one limit: parking and cars are the same. */
export function withMost(world: World, limit: number, most: number): World {
  const rows = world.rows.map((row) =>
    row.limit === limit ? { ...row, room: row.other.map((other) => Math.max(0, most - other)) } : row,
  );
  return { ...world, rows };
}

const UNTOUCHED: Touch = { rows: new Int32Array(0), re: new Float64Array(0), im: new Float64Array(0) };

function rowsFor(limit: DayLimit, index: number, window: DayWindow): LimitRow[] {
  return namesOfRows(limit).map((name) => {
    const other = Float64Array.from({ length: window.steps }, (_, k) => {
      const minute = startOfStep(window, k);
      return limit.other.reduce((sum, load) => (holds(load, minute) ? sum + onRow(load, name) : sum), 0);
    });
    return { limit: index, name, other, room: other.map((taken) => Math.max(0, limit.most - taken)) };
  });
}

const onRow = ({ amps = 0, kw = 0, A = 0, B = 0, C = 0 }: LoadOnLimit, row: string): number =>
  amps + kw + (row === 'A' ? A : row === 'B' ? B : row === 'C' ? C : 0);

/** One for all chargers that are alike to the limits. */
function touchesOf({ chargers, limits }: DayInput, rows: readonly LimitRow[]): Touch[] {
  const within = limits.map((limit) => (limit.chargers === 'all' ? null : new Set(limit.chargers)));
  const firstRow = limits.map((_, i) => rows.findIndex((row) => row.limit === i));
  const made = new Map<string, Touch>();
  return chargers.map(({ id, lines, volts }) => {
    const under = limits.map((_, i) => i).filter((i) => within[i]?.has(id) ?? within[i] === null);
    const key = `${lines} ${volts} ${under.join()}`;
    let touch = made.get(key);
    if (touch === undefined) {
      const all = under.flatMap((i) =>
        currentIn(limits[i]!, lines, volts).map((phasor, row): [number, UnitCurrent] => [firstRow[i]! + row, phasor]),
      );
      const some = all.filter(([, [re, im]]) => re !== 0 || im !== 0);
      touch = {
        rows: Int32Array.from(some, ([row]) => row),
        re: Float64Array.from(some, ([, [re]]) => re),
        im: Float64Array.from(some, ([, [, im]]) => im),
      };
      made.set(key, touch);
    }
    return touch;
  });
}
