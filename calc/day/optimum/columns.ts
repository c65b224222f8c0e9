import { addTo } from '../../../routing/lists/grouping.ts';
import { inOrderOfArrival } from '../cars/parking.ts';
import type { World } from '../simulated/world.ts';

/** The unknowns of a schedule: the amperes of a car in a step in which it may have a cord. */
export interface Columns {
  readonly car: Int32Array;
  readonly step: Int32Array;
  /** Columns of each car. */
  readonly ofCar: readonly (readonly number[])[];
  /** Columns of each step. */
  readonly ofStep: readonly (readonly number[])[];
  /** Columns that share one cord in one step, where that may be several cars. */
  readonly shared: readonly SharedCord[];
}

export interface SharedCord {
  readonly charger: number;
  readonly step: number;
  readonly columns: readonly number[];
}

/** Where cars keep the cord for their stay, the steps in which they hold it; where they hand it on, all they stand there. */
export function columnsOf(world: World): Columns {
  const { window, charger, stays, input } = world;
  const [car, step]: [number[], number[]] = [[], []];
  const ofCar: number[][] = stays.map(() => []);
  const ofStep: number[][] = Array.from({ length: window.steps }, () => []);
  const handed = input.hold === 'done';
  const free = new Int32Array(input.chargers.length);
  const atCord = new Map<number, number[]>();
  for (const i of inOrderOfArrival(stays)) {
    const c = charger[i]!;
    if (c < 0) continue;
    const { first, end } = stays[i]!;
    for (let k = handed ? first : Math.max(first, free[c]!); k < end; k++) {
      const column = car.push(i) - 1;
      step.push(k);
      ofCar[i]!.push(column);
      ofStep[k]!.push(column);
      if (!handed) continue;
      const key = c * window.steps + k;
      addTo(atCord, key, column);
    }
    free[c] = Math.max(free[c]!, end);
  }
  const shared = [...atCord]
    .filter(([, columns]) => columns.length > 1)
    .map(([key, columns]) => ({
      charger: Math.floor(key / window.steps),
      step: key % window.steps,
      columns,
    }));
  return { car: Int32Array.from(car), step: Int32Array.from(step), ofCar, ofStep, shared };
}
