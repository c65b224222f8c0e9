import type { World } from '../simulated/world.ts';
import { type DayRule, HAIR, type Moment } from './rule.ts';

/** One after another takes all that the limits leave it. */
function inOrder(order: (moment: Moment) => readonly number[]): DayRule {
  return (moment, amps) => {
    const { sums, cap, low, step } = moment;
    for (const car of order(moment)) {
      const most = sums.most(car, cap[car]!, step);
      amps[car] = most < low[car]! - HAIR ? 0 : most;
      if (amps[car]! > 0) sums.add(car, amps[car]!);
    }
  };
}

/** The car that came first charges first. */
export const firstCome = (world: World): DayRule => byRank(world, (i, j) => by(world, 'arrives', i, j) || i - j);

/** The car that leaves first charges first. */
export const byDeadline = (world: World): DayRule => byRank(world, leavesFirst(world));

/** The car with least time to spare, counted at full power, charges first. */
export function byLaxity(world: World): DayRule {
  const rank = ranks(world, leavesFirst(world));
  const cars = world.charger.length;
  const { max, kwh, need, stays, window } = world;
  return inOrder(({ holders, step, got }) => {
    const keys = new Float64Array(holders.length);
    holders.forEach((car, at) => {
      const full = (max[car]! * kwh[car]!) / window.step;
      const spare = (stays[car]!.end - step) * window.step - (need[car]! - got[car]!) / full;
      keys[at] = Math.floor(spare * 1e6 + 0.5) * cars + rank.of[car]!;
    });
    keys.sort();
    return Array.from(keys, (key) => rank.car[((key % cars) + cars) % cars]!);
  });
}

type Order = (i: number, j: number) => number;

const by = ({ stays }: World, what: 'arrives' | 'leaves', i: number, j: number): number =>
  stays[i]![what] - stays[j]![what];

const leavesFirst =
  (world: World): Order =>
  (i, j) =>
    by(world, 'leaves', i, j) || by(world, 'arrives', i, j) || i - j;

function ranks({ charger }: World, order: Order): { of: Int32Array; car: Int32Array } {
  const car = Int32Array.from(Array.from(charger, (_, i) => i).sort(order));
  const of = new Int32Array(car.length);
  car.forEach((one, rank) => {
    of[one] = rank;
  });
  return { of, car };
}

/** An order that never changes: ranks are sorted as numbers, which is quick. */
function byRank(world: World, order: Order): DayRule {
  const rank = ranks(world, order);
  return inOrder(({ holders }) => {
    const sorted = Int32Array.from(holders, (car) => rank.of[car]!).sort();
    return Array.from(sorted, (one) => rank.car[one]!);
  });
}
