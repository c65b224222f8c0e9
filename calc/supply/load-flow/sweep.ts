import { addConstantCurrents, addPowerCurrents, type Draws } from './draws.ts';
import { addProduct, type PhaseMatrix } from './phase-matrix.ts';
import { magnitudeAt } from './phasor.ts';

/** A place of a radial network where things are connected, with the branch that leads to it. */
export interface Bus {
  /** Number of the bus that feeds it, smaller than its own; -1 for one that holds its voltage. */
  readonly parent: number;
  /** Line to neutral volts that changes are measured against. */
  readonly nominal: number;
  /** Line-to-neutral phasors A, B, C of a bus that holds its voltage; null elsewhere. */
  readonly held: Float64Array | null;
  /** Turns ratio of the branch that leads here; null where volts and amps pass as they are. */
  readonly ratio: PhaseMatrix | null;
  /** How this bus's amps appear at the parent; null where they pass as they are. */
  readonly back: PhaseMatrix | null;
  /** Series impedance of the branch on this bus's side, ohms; null for none. */
  readonly impedance: PhaseMatrix | null;
}

/** Phasors of a solved network in flat lists, six numbers a bus: lines A, B, C, real and imaginary part. */
export interface Solved {
  /** Line-to-neutral volts. */
  readonly volts: Float64Array;
  /** Amps that flow out of each bus to what it feeds, and so through its branch on its own side. */
  readonly out: Float64Array;
  /** The same amps where the branch leaves the parent. */
  readonly into: Float64Array;
  /** Share of the constant currents at each bus that the ceilings leave, 0 to 1. */
  readonly share: Float64Array;
  /** The part of `out` that is constant current, under the ceiling of each bus and before those outside of it. */
  readonly steady: Float64Array;
  /** What it was solved for. */
  readonly draws: Draws;
  readonly rounds: number;
  /** Roots of the trees that did not settle. Their figures are those at no-load voltages. */
  readonly unsettled: readonly number[];
}

/** Largest change of any voltage in the last round, of nominal. Ten times finer than is promised. */
const SETTLED = 1e-10;
/** A feeder that can carry its load settles in about ten rounds; what has not by now is past its greatest power. */
const MOST_ROUNDS = 200;

/**
 * Solves a forest of radial three-phase networks by backward and forward sweeps: currents from the voltages, summed from
 * the leaves to the roots; voltages from the currents, from the roots out; until no voltage changes by more than 1e-9 of
 * its nominal. Impedance matrices may couple the lines. Where the constant currents beyond a bus exceed its ceiling they
 * are all scaled by one factor so that the largest line current is the ceiling; an outer ceiling scales them again.
 * Linear in the number of buses. RangeError where a bus stands before its parent.
 * Source: W. H. Kersting, Distribution System Modeling and Analysis, ch. 10, ladder technique (from memory).
 */
export function solve(buses: readonly Bus[], draws: Draws): Solved {
  const state = startOf(buses);
  const moved = new Float64Array(buses.length);
  let rounds = 0;
  let roots = state.roots;
  for (; rounds < MOST_ROUNDS && roots.length > 0; rounds++) {
    backward(buses, draws, state);
    moved.fill(0);
    forward(buses, state, moved);
    // The comparison is this way round so that a voltage which is not a number counts as moved.
    roots = state.roots.filter((root) => !(moved[root]! <= SETTLED));
  }
  if (roots.length > 0) restore(buses, state, new Set(roots));
  backward(buses, draws, state);
  const { volts, out, into, share, steady } = state;
  return { volts, out, into, share, steady, draws, rounds, unsettled: roots };
}

interface State {
  readonly roots: readonly number[];
  /** Root of each bus. */
  readonly rootOf: Int32Array;
  readonly volts: Float64Array;
  readonly out: Float64Array;
  readonly into: Float64Array;
  readonly share: Float64Array;
  /** Constant currents that flow out of each bus, before the ceilings outside of it. */
  readonly steady: Float64Array;
}

function startOf(buses: readonly Bus[]): State {
  const count = buses.length;
  const state: State = {
    roots: buses.flatMap(({ parent }, i) => (parent < 0 ? [i] : [])),
    rootOf: new Int32Array(count),
    volts: new Float64Array(6 * count),
    out: new Float64Array(6 * count),
    into: new Float64Array(6 * count),
    share: new Float64Array(count),
    steady: new Float64Array(6 * count),
  };
  buses.forEach(({ parent }, i) => {
    if (parent >= i) throw new RangeError(`bus ${i} stands before its parent ${parent}`);
    state.rootOf[i] = parent < 0 ? i : state.rootOf[parent]!;
  });
  forward(buses, state, new Float64Array(count));
  return state;
}

/** Voltages from the root out, with the currents as they are; the largest change of each tree to `moved` at its root. */
function forward(buses: readonly Bus[], state: State, moved: Float64Array): void {
  const { volts, out, rootOf } = state;
  const fresh = new Float64Array(6);
  for (let i = 0; i < buses.length; i++) {
    const bus = buses[i]!;
    if (bus.held !== null) copySix(bus.held, 0, fresh, 0);
    else if (bus.ratio === null) copySix(volts, 6 * bus.parent, fresh, 0);
    else {
      fresh.fill(0);
      addProduct(bus.ratio, volts, 6 * bus.parent, fresh, 0, 1);
    }
    if (bus.impedance !== null) addProduct(bus.impedance, out, 6 * i, fresh, 0, -1);
    let change = 0;
    for (let k = 0; k < 6; k++) change += Math.abs(fresh[k]! - volts[6 * i + k]!);
    const root = rootOf[i]!;
    if (!(change / bus.nominal <= moved[root]!)) moved[root] = change / bus.nominal;
    copySix(fresh, 0, volts, 6 * i);
  }
}

/** Written out: for six numbers a call of the built-in costs more than they do. */
function copySix(from: Float64Array, at: number, to: Float64Array, place: number): void {
  for (let k = 0; k < 6; k++) to[place + k] = from[at + k]!;
}

/** Currents from the leaves to the root under the voltages as they are. */
function backward(buses: readonly Bus[], draws: Draws, state: State): void {
  const { volts, out, into, share, steady } = state;
  out.fill(0);
  steady.fill(0);
  share.fill(1);
  for (let i = buses.length - 1; i >= 0; i--) {
    const bus = buses[i]!;
    addPowerCurrents(draws.power, i, volts, out);
    addConstantCurrents(draws.current, i, volts, steady);
    const largest = draws.ceiling[i]! === Infinity ? 0 : largestOf(steady, 6 * i);
    if (largest > draws.ceiling[i]!) {
      share[i] = draws.ceiling[i]! / largest;
      for (let k = 6 * i; k < 6 * i + 6; k++) steady[k]! *= share[i]!;
    }
    if (bus.parent < 0) continue;
    carry(bus, out, i);
    carry(bus, steady, i);
  }
  for (let i = 0; i < buses.length; i++) {
    const bus = buses[i]!;
    const outer = bus.parent < 0 ? 1 : share[bus.parent]!;
    share[i]! *= outer;
    for (let k = 6 * i; k < 6 * i + 6; k++) out[k]! += outer * steady[k]!;
    if (bus.back === null) copySix(out, 6 * i, into, 6 * i);
    else {
      into.fill(0, 6 * i, 6 * i + 6);
      addProduct(bus.back, out, 6 * i, into, 6 * i, 1);
    }
  }
}

function carry(bus: Bus, amps: Float64Array, i: number): void {
  if (bus.back !== null) addProduct(bus.back, amps, 6 * i, amps, 6 * bus.parent, 1);
  else for (let k = 0; k < 6; k++) amps[6 * bus.parent + k]! += amps[6 * i + k]!;
}

const largestOf = (amps: Float64Array, at: number): number =>
  Math.max(magnitudeAt(amps, at / 2), magnitudeAt(amps, at / 2 + 1), magnitudeAt(amps, at / 2 + 2));

/** Puts the trees under these roots back to what they are without load. */
function restore(buses: readonly Bus[], state: State, roots: ReadonlySet<number>): void {
  buses.forEach((_, i) => {
    if (roots.has(state.rootOf[i]!)) state.out.fill(0, 6 * i, 6 * i + 6);
  });
  forward(buses, state, new Float64Array(buses.length));
}
