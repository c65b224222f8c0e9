import type { World } from './world.ts';

/** The phasor sum in each row, and how much more of one charger it bears. */
export class LimitSums {
  readonly re: Float64Array;
  readonly im: Float64Array;
  private readonly world: World;

  constructor(world: World) {
    this.world = world;
    this.re = new Float64Array(world.rows.length);
    this.im = new Float64Array(world.rows.length);
  }

  clear(): void {
    this.re.fill(0);
    this.im.fill(0);
  }

  add(car: number, amps: number): void {
    const { rows, re, im } = this.world.touch[car]!;
    for (let j = 0; j < rows.length; j++) {
      const row = rows[j]!;
      this.re[row] = this.re[row]! + re[j]! * amps;
      this.im[row] = this.im[row]! + im[j]! * amps;
    }
  }

  /** The largest amperes up to `cap` with which every row that the car is in stays within its room at a step. */
  most(car: number, cap: number, step: number): number {
    const { rows, re, im } = this.world.touch[car]!;
    let most = cap;
    for (let j = 0; j < rows.length; j++) {
      const row = rows[j]!;
      const reach = untilFull(this.re[row]!, this.im[row]!, re[j]!, im[j]!, this.world.rows[row]!.room[step]!);
      if (reach < most) most = reach;
    }
    return most;
  }

  magnitude(row: number): number {
    return Math.sqrt(this.re[row]! * this.re[row]! + this.im[row]! * this.im[row]!);
  }
}

/** How far s may go along d until its magnitude comes to `room`: the root of a quadratic, without cancellation. */
export function untilFull(sRe: number, sIm: number, dRe: number, dIm: number, room: number): number {
  const a = dRe * dRe + dIm * dIm;
  if (a === 0) return Number.POSITIVE_INFINITY;
  const b = sRe * dRe + sIm * dIm;
  const left = Math.max(0, room * room - (sRe * sRe + sIm * sIm));
  const root = Math.sqrt(b * b + a * left);
  if (b < 0) return (root - b) / a;
  return left === 0 ? 0 : left / (b + root);
}
