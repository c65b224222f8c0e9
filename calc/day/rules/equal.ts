import { untilFull } from '../simulated/limit-sums.ts';
import type { World } from '../simulated/world.ts';
import { type DayRule, HAIR, type Moment } from './rule.ts';

/**
 * Equal shares: first each that fits is let in with its least, the least served before others; then one level rises for
 * all who are in, until a row that they load is full and those in it stop, or until each has all it can take.
 */
export function equalShare(world: World): DayRule {
  const ranks = arrivalRanks(world);
  return (moment, amps) => {
    const entered = admitted(moment, ranks);
    raise(moment, entered, amps);
  };
}

function arrivalRanks({ stays }: World): { of: Int32Array; car: Int32Array } {
  const car = Int32Array.from(stays.map((_, i) => i).sort((i, j) => stays[i]!.arrives - stays[j]!.arrives || i - j));
  const of = new Int32Array(car.length);
  car.forEach((one, rank) => {
    of[one] = rank;
  });
  return { of, car };
}

/** Those who get at least their least; they are in the sums with it. */
function admitted(
  { world, holders, got, low, sums, step }: Moment,
  ranks: { of: Int32Array; car: Int32Array },
): number[] {
  const cars = world.charger.length;
  const keys = new Float64Array(holders.length);
  holders.forEach((car, at) => {
    keys[at] = Math.floor((got[car]! / world.need[car]!) * 1e9 + 0.5) * cars + ranks.of[car]!;
  });
  keys.sort();
  const entered: number[] = [];
  for (const key of keys) {
    const car = ranks.car[key % cars]!;
    if (sums.most(car, low[car]!, step) < low[car]! - HAIR) continue;
    if (low[car]! > 0) sums.add(car, low[car]!);
    entered.push(car);
  }
  return entered;
}

/** Cars that begin to rise at a level, and those that have all they can take there. */
interface Level {
  readonly begin: number[];
  readonly end: number[];
}

/** The level rises from event to event; between them each row's sum moves along a straight line. */
function raise({ world, step, cap, low, sums }: Moment, entered: readonly number[], amps: Float64Array): void {
  const rows = new Rising(world, step, sums.re, sums.im);
  const levels = new Map<number, Level>();
  const at = (level: number): Level => {
    let one = levels.get(level);
    if (one === undefined) {
      one = { begin: [], end: [] };
      levels.set(level, one);
    }
    return one;
  };
  const inRow: number[][] = world.rows.map(() => []);
  for (const car of entered) {
    amps[car] = cap[car]!;
    if (cap[car]! <= low[car]!) continue;
    at(low[car]!).begin.push(car);
    at(cap[car]!).end.push(car);
    for (const row of world.touch[car]!.rows) inRow[row]!.push(car);
  }
  const stopped = new Uint8Array(world.charger.length);
  const sorted = [...levels.keys()].sort((a, b) => a - b);
  for (let next = 0; next < sorted.length; ) {
    const level = sorted[next]!;
    const { row, level: full } = rows.nextFull();
    if (full <= level) {
      for (const car of inRow[row]!) {
        const rises = rows.rises(car);
        if (stopped[car] === 1 || (!rises && cap[car]! <= full)) continue;
        stopped[car] = 1;
        amps[car] = Math.min(cap[car]!, Math.max(low[car]!, full));
        if (rises) rows.turn(car, full, false);
      }
      rows.settle(full);
      continue;
    }
    for (const car of levels.get(level)!.end) if (rows.rises(car)) rows.turn(car, level, false);
    for (const car of levels.get(level)!.begin) if (stopped[car] === 0) rows.turn(car, level, true);
    rows.settle(level);
    next++;
  }
}

/** The sums of all rows while a level rises, and the level at which each comes to its room. */
class Rising {
  private readonly dRe: Float64Array;
  private readonly dIm: Float64Array;
  /** The level at which the sums of a row were last worked. */
  private readonly worked: Float64Array;
  private readonly full: Float64Array;
  /** How many rise in a row: exact, where the sum of their directions is rounded. */
  private readonly many: Int32Array;
  private readonly rising: Uint8Array;
  private readonly changed = new Set<number>();
  private readonly world: World;
  private readonly step: number;
  private readonly re: Float64Array;
  private readonly im: Float64Array;

  constructor(world: World, step: number, re: Float64Array, im: Float64Array) {
    this.world = world;
    this.step = step;
    this.re = re;
    this.im = im;
    const rows = world.rows.length;
    this.dRe = new Float64Array(rows);
    this.dIm = new Float64Array(rows);
    this.worked = new Float64Array(rows);
    this.full = new Float64Array(rows).fill(Number.POSITIVE_INFINITY);
    this.many = new Int32Array(rows);
    this.rising = new Uint8Array(world.charger.length);
  }

  rises(car: number): boolean {
    return this.rising[car] === 1;
  }

  /** A car begins to rise at a level, or stops. */
  turn(car: number, level: number, on: boolean): void {
    this.rising[car] = on ? 1 : 0;
    const { rows, re, im } = this.world.touch[car]!;
    const sign = on ? 1 : -1;
    for (let j = 0; j < rows.length; j++) {
      const row = rows[j]!;
      this.workUpTo(row, level);
      this.dRe[row] = this.dRe[row]! + sign * re[j]!;
      this.dIm[row] = this.dIm[row]! + sign * im[j]!;
      this.many[row] = this.many[row]! + sign;
      this.changed.add(row);
    }
  }

  /** After turns at a level: when the rows that they changed will be full. */
  settle(level: number): void {
    for (const row of this.changed) {
      const room = this.world.rows[row]!.room[this.step]!;
      this.full[row] =
        this.many[row] === 0
          ? Number.POSITIVE_INFINITY
          : level + untilFull(this.re[row]!, this.im[row]!, this.dRe[row]!, this.dIm[row]!, room);
    }
    this.changed.clear();
  }

  nextFull(): { readonly row: number; readonly level: number } {
    let row = -1;
    let level = Number.POSITIVE_INFINITY;
    for (let r = 0; r < this.full.length; r++)
      if (this.full[r]! < level) {
        row = r;
        level = this.full[r]!;
      }
    return { row, level };
  }

  private workUpTo(row: number, level: number): void {
    const by = level - this.worked[row]!;
    if (by > 0) {
      this.re[row] = this.re[row]! + this.dRe[row]! * by;
      this.im[row] = this.im[row]! + this.dIm[row]! * by;
    }
    this.worked[row] = level;
  }
}
