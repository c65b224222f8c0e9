import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import { addConstantCurrents, addDraw, addPowerCurrents, PER_BUS } from '../load-flow/draws.ts';
import { addProduct } from '../load-flow/phase-matrix.ts';
import type { Bus, Solved } from '../load-flow/sweep.ts';

/** A charger by what its volts depend on, before its branch. */
export interface Seat {
  readonly bus: number;
  /** Place of its lines in `LINES`. */
  readonly lines: number;
  readonly amps: number;
}

const MOST_ROUNDS = 60;
const SETTLED = 1e-9;

/**
 * Line-to-neutral volts, six numbers, of the bus that a charger hangs on when it alone runs at its rating, while the other
 * chargers under the ceilings above it are scaled by one factor at each so that the ceiling is kept: what a load-managed
 * board may give one car. What hangs beside its way to the root keeps the currents of the solved case: its volts hardly
 * change. A ceiling below its own rating does not hold it back.
 */
export function ratedVolts(buses: readonly Bus[], solved: Solved, seat: Seat, powerFactor: number): Float64Array {
  const path: number[] = [];
  for (let bus = seat.bus; bus >= 0; bus = buses[bus]!.parent) path.push(bus);
  if (solved.unsettled.includes(path.at(-1)!)) return solved.volts.slice(6 * seat.bus, 6 * seat.bus + 6);
  const stretches = path.map((bus, i) => stretchOf(buses, solved, bus, path[i - 1] ?? null));
  const own = { re: seat.amps * powerFactor, im: -seat.amps * Math.sqrt(1 - powerFactor ** 2) };
  const lines: Lines = LINES[seat.lines]!;
  // The charger is among the constant currents of its bus: it is taken out of them and laid beside.
  const [first] = stretches;
  addDraw(first!.current, 0, lines, -own.re, -own.im);
  const alone = new Float64Array(PER_BUS);
  addDraw(alone, 0, lines, own.re, own.im);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    inwards(stretches, alone);
    if (outwards(stretches) <= SETTLED) break;
  }
  return first!.volts;
}

/** One bus of the way from a charger to the root. Six numbers a list but for the draws. */
interface Stretch {
  readonly bus: Bus;
  readonly ceiling: number;
  readonly volts: Float64Array;
  /** Draws of the bus itself. */
  readonly power: Float64Array;
  readonly current: Float64Array;
  /** Amps of what hangs beside the way, as solved: constant powers, and constant currents before the ceilings above. */
  readonly besidePower: Float64Array;
  readonly besideSteady: Float64Array;
  /** Amps out of the bus: constant powers and the charger, and the constant currents that the ceilings scale. */
  readonly firm: Float64Array;
  readonly steady: Float64Array;
  readonly out: Float64Array;
  /** Share of the constant currents that its own ceiling leaves. */
  share: number;
  /** The part of `firm` that the charger makes. */
  readonly lone: Float64Array;
}

function stretchOf(buses: readonly Bus[], solved: Solved, at: number, within: number | null): Stretch {
  const bus = buses[at]!;
  const outer = bus.parent < 0 ? 1 : solved.share[bus.parent]!;
  const slice = (list: Float64Array, per: number): Float64Array => list.slice(per * at, per * at + per);
  const steady = slice(solved.steady, 6);
  const power = slice(solved.out, 6).map((amps, k) => amps - outer * steady[k]!);
  const volts = slice(solved.volts, 6);
  const drawnPower = slice(solved.draws.power, PER_BUS);
  const drawnCurrent = slice(solved.draws.current, PER_BUS);
  // What its own ceiling left, and so what `steady` was scaled by.
  const own = outer === 0 ? 1 : solved.share[at]! / outer;
  const besideSteady = steady.map((amps) => (own === 0 ? 0 : amps / own));
  const besidePower = power;
  const now = new Float64Array(6);
  addPowerCurrents(drawnPower, 0, volts, now);
  subtract(besidePower, now);
  now.fill(0);
  addConstantCurrents(drawnCurrent, 0, volts, now);
  subtract(besideSteady, now);
  if (within !== null) {
    const inner = buses[within]!;
    const innerSteady = solved.steady.slice(6 * within, 6 * within + 6);
    const innerPower = solved.out
      .slice(6 * within, 6 * within + 6)
      .map((amps, k) => amps - solved.share[at]! * innerSteady[k]!);
    subtract(besidePower, carried(inner, innerPower));
    subtract(besideSteady, carried(inner, innerSteady));
  }
  return {
    bus,
    ceiling: solved.draws.ceiling[at]!,
    volts,
    power: drawnPower,
    current: drawnCurrent,
    besidePower,
    besideSteady,
    firm: new Float64Array(6),
    steady: new Float64Array(6),
    out: new Float64Array(6),
    lone: new Float64Array(6),
    share: 1,
  };
}

function subtract(from: Float64Array, what: Float64Array): void {
  for (let k = 0; k < 6; k++) from[k]! -= what[k]!;
}

function carried(bus: Bus, amps: Float64Array): Float64Array {
  if (bus.back === null) return amps;
  const there = new Float64Array(6);
  addProduct(bus.back, amps, 0, there, 0, 1);
  return there;
}

/** Amps from the charger to the root under the volts as they are. */
function inwards(stretches: readonly Stretch[], alone: Float64Array): void {
  let inner: Stretch | null = null;
  for (const stretch of stretches) {
    const { firm, steady, lone, volts } = stretch;
    firm.set(stretch.besidePower);
    addPowerCurrents(stretch.power, 0, volts, firm);
    steady.set(stretch.besideSteady);
    addConstantCurrents(stretch.current, 0, volts, steady);
    if (inner === null) {
      lone.fill(0);
      addConstantCurrents(alone, 0, volts, lone);
    } else {
      lone.set(carried(inner.bus, inner.lone));
      const [power, scaled] = [carried(inner.bus, inner.firm), carried(inner.bus, inner.steady)];
      for (let k = 0; k < 6; k++) {
        firm[k]! += power[k]!;
        steady[k]! += scaled[k]!;
      }
    }
    stretch.share = stretch.ceiling === Infinity ? 1 : shareLeft(lone, steady, stretch.ceiling);
    for (let k = 0; k < 6; k++) steady[k]! *= stretch.share;
    inner = stretch;
  }
  let outer = 1;
  for (const stretch of stretches.toReversed()) {
    for (let k = 0; k < 6; k++) stretch.out[k] = stretch.firm[k]! + stretch.lone[k]! + outer * stretch.steady[k]!;
    outer *= stretch.share;
  }
}

/** Volts from the root to the charger with the amps as they are; the largest change, of nominal. */
function outwards(stretches: readonly Stretch[]): number {
  let most = 0;
  for (let i = stretches.length - 2; i >= 0; i--) {
    const { bus, volts, out } = stretches[i]!;
    const above = stretches[i + 1]!.volts;
    const fresh = new Float64Array(6);
    if (bus.ratio === null) fresh.set(above);
    else addProduct(bus.ratio, above, 0, fresh, 0, 1);
    if (bus.impedance !== null) addProduct(bus.impedance, out, 0, fresh, 0, -1);
    let change = 0;
    for (let k = 0; k < 6; k++) change += Math.abs(fresh[k]! - volts[k]!);
    most = Math.max(most, change / bus.nominal);
    volts.set(fresh);
  }
  return most;
}

/** Largest share, to 1, of `steady` with which no line of `lone + share x steady` is over the ceiling; 0 where none is left. */
function shareLeft(lone: Float64Array, steady: Float64Array, ceiling: number): number {
  let share = 1;
  for (let line = 0; line < 3; line++) {
    const [aRe, aIm] = [lone[2 * line]!, lone[2 * line + 1]!];
    const [bRe, bIm] = [steady[2 * line]!, steady[2 * line + 1]!];
    const a = bRe * bRe + bIm * bIm;
    const b = aRe * bRe + aIm * bIm;
    const c = aRe * aRe + aIm * aIm - ceiling * ceiling;
    if (c >= 0) return 0;
    if (a === 0) continue;
    share = Math.min(share, (Math.sqrt(b * b - a * c) - b) / a);
  }
  return share;
}
