import type { LegAmps, LegCost } from '../load-flow/line-current.ts';
import { splitBySearch } from './leg-search.ts';
import { splitByTable } from './leg-table.ts';

/** One way to lay loads on three legs: leg 0, 1 or 2 of each load. */
export interface Split {
  readonly legOf: readonly number[];
  /** Least that the cost can be; equal to what the split costs where it is proved best. */
  readonly bound: number;
}

/**
 * Splits loads over three legs at the least cost. Proved best for whatever a panel holds: loads with a common unit by a
 * table of the sums that can be reached, others by search. Where neither comes to its end in good time, the best of the
 * search and of a table of rounded loads is given, and `bound` says what no split can better.
 */
export function leastSplit(loads: readonly number[], cost: LegCost): Split {
  const legOf = largestFirst(loads);
  const reached = cost(sumsOf(loads, legOf));
  const unit = commonUnit(loads);
  const bound = cost(evenLegs(loads, unit));
  if (reached <= bound * (1 + 1e-12)) return { legOf, bound: reached };
  const exact = unit === null ? null : tabled(loads, cost, unit, reached);
  if (exact !== null) return { legOf: exact, bound: cost(sumsOf(loads, exact)) };
  const found = splitBySearch(loads, cost, { legOf, cost: reached }, bound);
  if (found.proved) return { legOf: found.legOf, bound: cost(sumsOf(loads, found.legOf)) };
  const rough = tabled(loads, cost, loads.reduce((sum, load) => sum + load, 0) / ROUGH_STEPS, 1.02 * reached);
  const better = rough !== null && cost(sumsOf(loads, rough)) < cost(sumsOf(loads, found.legOf));
  return { legOf: better ? rough : found.legOf, bound };
}

/** Steps that the total is rounded to where loads have no unit and are too many to search. */
const ROUGH_STEPS = 3000;

const tabled = (loads: readonly number[], cost: LegCost, unit: number, reached: number): readonly number[] | null =>
  splitByTable(
    loads.map((load) => Math.round(load / unit)),
    ([x, y, z]) => cost([x * unit, y * unit, z * unit]),
    reached,
  );

/** The sum of each leg. */
export function sumsOf(loads: readonly number[], legOf: readonly number[]): LegAmps {
  const sums: [number, number, number] = [0, 0, 0];
  loads.forEach((load, i) => {
    sums[legOf[i]!]! += load;
  });
  return sums;
}

/** Each load, from the largest, on the leg that has least. */
function largestFirst(loads: readonly number[]): number[] {
  const legOf = loads.map(() => 0);
  const sums = [0, 0, 0];
  const order = loads.map((_, i) => i).sort((a, b) => loads[b]! - loads[a]! || a - b);
  for (const i of order) {
    const leg = sums.indexOf(Math.min(...sums));
    legOf[i] = leg;
    sums[leg]! += loads[i]!;
  }
  return legOf;
}

/** Greatest number that goes into every load a whole number of times, down to a thousandth; null where there is none. */
function commonUnit(loads: readonly number[]): number | null {
  for (const scale of [1, 10, 100, 1000]) {
    const wholes = loads.map((load) => Math.round(load * scale));
    if (wholes.every((whole, i) => Math.abs(whole - loads[i]! * scale) <= 1e-9 * whole))
      return wholes.reduce(greatestCommonDivisor, 0) / scale;
  }
  return null;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [high, low] = [a, b];
  while (low !== 0) [high, low] = [low, high % low];
  return high;
}

/** Three sums as even as whole units allow, the smallest load left whole or not: no split costs less. */
function evenLegs(loads: readonly number[], unit: number | null): LegAmps {
  const total = loads.reduce((sum, load) => sum + load, 0);
  const step = unit ?? 0;
  const up = (amps: number): number => (step === 0 ? amps : step * Math.ceil(amps / step - 1e-9));
  const first = Math.max(up(total / 3), ...loads);
  const second = up((total - first) / 2);
  return [first, second, total - first - second];
}
