import { DAY_RULES, type Strategy } from '../rules/rules.ts';
import { cordsInStep } from './cords.ts';
import { LimitSums } from './limit-sums.ts';
import type { World } from './world.ts';

/** A day as it went under a rule. */
export interface Course {
  /** Kilowatt-hours of each car. */
  readonly got: Float64Array;
  /** Kilowatts of all together in each step. */
  readonly kw: Float64Array;
  /** Amperes in each row in each step, of the chargers alone. */
  readonly rows: readonly Float64Array[];
  /** Amperes of each car in each step, where asked for. */
  readonly amps: readonly Float64Array[] | null;
}

/**
 * A day under a rule, step by step, with what is known at the start of each step. Current is constant in a step, power at
 * nominal volts and unity power factor.
 */
export function simulate(world: World, strategy: Strategy, { keepAmps = false } = {}): Course {
  const { window, charger, need, max, minAmps, kwh, kw: perAmp, rows: limitRows } = world;
  const cars = charger.length;
  const rule = DAY_RULES[strategy](world);
  const cords = cordsInStep(world);
  const sums = new LimitSums(world);
  const [got, cap, low, amps] = [0, 1, 2, 3].map(() => new Float64Array(cars)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const kw = new Float64Array(window.steps);
  const rows = limitRows.map(() => new Float64Array(window.steps));
  const kept = keepAmps ? Array.from({ length: cars }, () => new Float64Array(window.steps)) : null;
  const taper = taperOf(world);
  for (let step = 0; step < window.steps; step++) {
    const holders = cords(step, got);
    for (const car of holders) {
      cap[car] = Math.min(max[car]! * taper(car, got[car]!), (need[car]! - got[car]!) / kwh[car]!);
      low[car] = Math.min(minAmps[car]!, cap[car]!);
      amps[car] = 0;
    }
    sums.clear();
    rule({ world, step, holders, got, cap, low, sums }, amps);
    sums.clear();
    for (const car of holders) {
      const current = amps[car]!;
      if (current === 0) continue;
      got[car] = got[car]! + current * kwh[car]!;
      kw[step] = kw[step]! + current * perAmp[car]!;
      sums.add(car, current);
      if (kept !== null) kept[car]![step] = current;
    }
    for (let row = 0; row < rows.length; row++) rows[row]![step] = sums.magnitude(row);
  }
  return { got, kw, rows, amps: kept };
}

/** The part of its most that a car takes when it has got so much; 1 where it does not take less as it fills. */
function taperOf({ input: { taper, cars } }: World): (car: number, got: number) => number {
  if (taper === null) return () => 1;
  const { above, last } = taper;
  return (car, got) => {
    const { battery, state = 0 } = cars[car]!;
    if (battery === undefined) return 1;
    const charge = state + got / battery;
    return charge <= above ? 1 : Math.max(last, 1 - ((1 - last) * (charge - above)) / (1 - above));
  };
}
