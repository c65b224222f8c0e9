import { addTo } from '../../../routing/lists/grouping.ts';
import { indexById } from '../../../routing/site/ids.ts';
import { DAY, type DayWindow, minutesOf, minutesUntil } from '../clock.ts';
import type { DayCar, DayCharger } from '../day-input.ts';

/** The whole steps in which a car stands there, `first` up to but not including `end`; empty where it is too short. */
export interface Stay {
  /** Minutes from the window's start. */
  readonly arrives: number;
  readonly leaves: number;
  readonly first: number;
  readonly end: number;
}

/** A car that leaves at the minute it came stays a day; one that comes after the window stood there before it. */
export function stayOf({ arrive, leave }: DayCar, { from, minutes, step }: DayWindow): Stay {
  const [came, left] = [minutesOf(arrive), minutesOf(leave)];
  let arrives = (came - from + DAY) % DAY;
  let leaves = arrives + minutesUntil(came, left);
  if (arrives >= minutes) {
    arrives -= DAY;
    leaves -= DAY;
  }
  arrives = Math.max(arrives, 0);
  leaves = Math.min(leaves, minutes);
  return { arrives, leaves, first: Math.ceil(arrives / step), end: Math.floor(leaves / step) };
}

/** Indices of cars in the order in which they come: by minute, then as they are listed. */
export const inOrderOfArrival = (stays: readonly Stay[]): number[] =>
  stays.map((_, i) => i).sort((i, j) => stays[i]!.arrives - stays[j]!.arrives || i - j);

/**
 * The charger of each car, -1 for none: each takes the one with a free stall on which the fewest cars stand, the earlier
 * listed of equals, or the one it insists on. A stall is free again in the step in which the car before has gone. Who has
 * no whole step, or finds no stall, gets none.
 */
export function park(cars: readonly DayCar[], stays: readonly Stay[], chargers: readonly DayCharger[]): Int32Array {
  const where = new Int32Array(cars.length).fill(-1);
  const index = indexById(chargers);
  const standing = new LeastFirst(chargers.map(({ stalls }) => (stalls > 0 ? 0 : FULL)));
  const taken = new Int32Array(chargers.length);
  const leaving = new Map<number, number[]>();
  let now = 0;
  const set = (charger: number, by: number): void => {
    taken[charger] = taken[charger]! + by;
    standing.set(charger, taken[charger]! < chargers[charger]!.stalls ? taken[charger]! : FULL);
  };
  for (const i of inOrderOfArrival(stays)) {
    const { first, end } = stays[i]!;
    if (first >= end) continue;
    for (; now <= first; now++) {
      for (const charger of leaving.get(now) ?? []) set(charger, -1);
      leaving.delete(now);
    }
    const wish = cars[i]!.charger;
    const charger = wish === undefined ? standing.least() : (index.get(wish) ?? -1);
    if (charger < 0 || taken[charger]! >= chargers[charger]!.stalls) continue;
    where[i] = charger;
    set(charger, 1);
    addTo(leaving, end, charger);
  }
  return where;
}

const FULL = Number.POSITIVE_INFINITY;

/** Numbers of which the least, the first of equals, is found without going through all: a tree of minima. */
class LeastFirst {
  private readonly size: number;
  private readonly tree: Float64Array;

  constructor(values: readonly number[]) {
    let size = 1;
    while (size < values.length) size *= 2;
    this.size = size;
    this.tree = new Float64Array(2 * size).fill(FULL);
    values.forEach((value, i) => {
      this.tree[size + i] = value;
    });
    for (let i = size - 1; i > 0; i--) this.tree[i] = Math.min(this.tree[2 * i]!, this.tree[2 * i + 1]!);
  }

  set(at: number, value: number): void {
    let i = this.size + at;
    this.tree[i] = value;
    for (i >>= 1; i > 0; i >>= 1) this.tree[i] = Math.min(this.tree[2 * i]!, this.tree[2 * i + 1]!);
  }

  /** Index of the least; -1 where all are full. */
  least(): number {
    if (this.tree[1] === FULL) return -1;
    let i = 1;
    while (i < this.size) i = this.tree[2 * i]! <= this.tree[2 * i + 1]! ? 2 * i : 2 * i + 1;
    return i - this.size;
  }
}
