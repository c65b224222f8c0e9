import type { World } from '../simulated/world.ts';
import type { Columns } from './columns.ts';

/**
 * Prices of what a schedule is held to, all of them 0 or more, whoever they come from: any such prices give a bound, good
 * ones a close bound. Per kilowatt-hour, ampere of a row, or cord.
 */
export interface Multipliers {
  /** Of each car's need, which it may not go over. */
  readonly need: Float64Array;
  /** Of each car's target, which it may not go under. */
  readonly target?: Float64Array;
  /** Of all energy together, which may not go under `least`. */
  readonly energy?: { readonly price: number; readonly least: number };
  /** Of each limit's rows, step by step: the phasor sum of its chords' prices. */
  readonly rows: readonly { readonly re: Float64Array; readonly im: Float64Array }[];
  /** Of each shared cord. */
  readonly cords: Float64Array;
  /** Added to the cost of an ampere of each column: what demand costs there. */
  readonly demand?: (column: number) => number;
}

/** What is minimized: the cost of an ampere of each column. */
export type ColumnCosts = (column: number) => number;

/**
 * A lower bound on the cost of any schedule within the limits, by weak duality: the prices' own terms, and for each
 * unknown what it could gain at them. Nothing but the prices is taken from a solver. Rows of `free`, the limit that is
 * itself looked for, count their other loads in place of their room.
 */
export function lowerBound(
  world: World,
  columns: Columns,
  costs: ColumnCosts,
  by: Multipliers,
  targets?: Float64Array,
  free = -1,
): number {
  const { need, kwh, max, touch } = world;
  let bound = by.energy === undefined ? 0 : by.energy.price * by.energy.least;
  for (let car = 0; car < need.length; car++) {
    bound -= by.need[car]! * need[car]!;
    if (by.target !== undefined && targets !== undefined) bound += by.target[car]! * targets[car]!;
  }
  world.rows.forEach(({ room, other, limit }, row) => {
    const { re, im } = by.rows[row]!;
    for (let k = 0; k < room.length; k++) {
      const size = Math.sqrt(re[k]! * re[k]! + im[k]! * im[k]!);
      bound += limit === free ? size * other[k]! : -size * room[k]!;
    }
  });
  for (const price of by.cords) bound -= price;
  const cord = new Float64Array(columns.car.length);
  columns.shared.forEach(({ columns: sharing }, i) => {
    for (const column of sharing) cord[column] = by.cords[i]!;
  });
  for (let column = 0; column < columns.car.length; column++) {
    const car = columns.car[column]!;
    const step = columns.step[column]!;
    let cost = costs(column) + (by.demand?.(column) ?? 0);
    cost += kwh[car]! * (by.need[car]! - (by.target?.[car] ?? 0) - (by.energy?.price ?? 0));
    const { rows, re, im } = touch[car]!;
    for (let j = 0; j < rows.length; j++) {
      const price = by.rows[rows[j]!]!;
      cost += price.re[step]! * re[j]! + price.im[step]! * im[j]!;
    }
    if (max[car]! > 0) cost += cord[column]! / max[car]!;
    if (cost < 0) bound += cost * max[car]!;
  }
  return bound;
}
