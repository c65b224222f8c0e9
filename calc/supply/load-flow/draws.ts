import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';

/** Numbers per bus in the flat lists of draws: real and imaginary part for each word of `LINES`. */
export const PER_BUS = 2 * LINES.length;

const places: ReadonlyMap<string, number> = new Map(LINES.map((lines, place) => [lines, place]));

/**
 * What every bus of a network draws, summed by the lines it lies across. One-line words are line to neutral. `ABC` is a
 * three-phase draw that needs no neutral: a power is shared by the three pairs, a current is one balanced set.
 */
export interface Draws {
  /** Constant power: watts and vars, lagging positive; generation is negative. */
  readonly power: Float64Array;
  /** Constant current: amperes in phase with the voltage and a quarter turn ahead of it (lagging is negative). */
  readonly current: Float64Array;
  /** Greatest line current, A, that the constant currents at a bus and beyond it may come to; Infinity where none is set. */
  readonly ceiling: Float64Array;
}

export const noDraws = (buses: number): Draws => ({
  power: new Float64Array(PER_BUS * buses),
  current: new Float64Array(PER_BUS * buses),
  ceiling: new Float64Array(buses).fill(Infinity),
});

/** Adds a draw to a list while it is being made. */
export function addDraw(list: Float64Array, bus: number, lines: Lines, re: number, im: number): void {
  const at = PER_BUS * bus + 2 * places.get(lines)!;
  list[at]! += re;
  list[at + 1]! += im;
}

/** Adds to `out` (six numbers from `at`) the line currents of constant powers under the voltages `v`. */
export function addPowerCurrents(power: Float64Array, bus: number, v: Float64Array, out: Float64Array): void {
  const at = 6 * bus;
  for (let place = 0; place < 6; place++) {
    const p = power[PER_BUS * bus + 2 * place]!;
    const q = power[PER_BUS * bus + 2 * place + 1]!;
    if (p !== 0 || q !== 0) addPower(v, at, place, p, q, out);
  }
  const p = power[PER_BUS * bus + 12]! / 3;
  const q = power[PER_BUS * bus + 13]! / 3;
  if (p !== 0 || q !== 0) for (let place = 3; place < 6; place++) addPower(v, at, place, p, q, out);
}

// I = conj(S / V) = (p - jq) V / |V|², since V and conj(V) turn against one another.
function addPower(v: Float64Array, at: number, place: number, p: number, q: number, out: Float64Array): void {
  const line = place % 3;
  const one = at + 2 * line;
  const other = place < 3 ? -1 : at + 2 * ((line + 1) % 3);
  const re = v[one]! - (other < 0 ? 0 : v[other]!);
  const im = v[one + 1]! - (other < 0 ? 0 : v[other + 1]!);
  const square = re * re + im * im;
  spread(out, one, other, (p * re + q * im) / square, (p * im - q * re) / square);
}

/** Adds to `out` the line currents of constant currents under the voltages `v`. */
export function addConstantCurrents(current: Float64Array, bus: number, v: Float64Array, out: Float64Array): void {
  const at = 6 * bus;
  for (let place = 0; place < 6; place++) {
    const along = current[PER_BUS * bus + 2 * place]!;
    const ahead = current[PER_BUS * bus + 2 * place + 1]!;
    if (along === 0 && ahead === 0) continue;
    const line = place % 3;
    const one = at + 2 * line;
    const other = place < 3 ? -1 : at + 2 * ((line + 1) % 3);
    const re = v[one]! - (other < 0 ? 0 : v[other]!);
    const im = v[one + 1]! - (other < 0 ? 0 : v[other + 1]!);
    const size = Math.sqrt(re * re + im * im);
    spread(out, one, other, (along * re - ahead * im) / size, (along * im + ahead * re) / size);
  }
  const along = current[PER_BUS * bus + 12]!;
  const ahead = current[PER_BUS * bus + 13]!;
  if (along !== 0 || ahead !== 0) addBalancedSet(v, at, along, ahead, out);
}

function spread(out: Float64Array, one: number, other: number, re: number, im: number): void {
  out[one]! += re;
  out[one + 1]! += im;
  if (other < 0) return;
  out[other]! -= re;
  out[other + 1]! -= im;
}

const HALF_ROOT_3 = Math.sqrt(3) / 2;

/**
 * A three-phase charger draws the same current in each line and has no neutral: a balanced set on the positive sequence
 * of the voltages, V1 = (VA + a VB + a² VC) / 3. Under balanced voltages each line current lags its own line to neutral.
 */
function addBalancedSet(v: Float64Array, at: number, along: number, ahead: number, out: Float64Array): void {
  const [aRe, aIm, bRe, bIm, cRe, cIm] = [v[at]!, v[at + 1]!, v[at + 2]!, v[at + 3]!, v[at + 4]!, v[at + 5]!];
  const v1Re = aRe - (bRe + cRe) / 2 + HALF_ROOT_3 * (cIm - bIm);
  const v1Im = aIm - (bIm + cIm) / 2 + HALF_ROOT_3 * (bRe - cRe);
  const size = Math.sqrt(v1Re * v1Re + v1Im * v1Im);
  const re = (along * v1Re - ahead * v1Im) / size;
  const im = (along * v1Im + ahead * v1Re) / size;
  out[at]! += re;
  out[at + 1]! += im;
  out[at + 2]! += -re / 2 + HALF_ROOT_3 * im;
  out[at + 3]! += -im / 2 - HALF_ROOT_3 * re;
  out[at + 4]! += -re / 2 - HALF_ROOT_3 * im;
  out[at + 5]! += -im / 2 + HALF_ROOT_3 * re;
}
