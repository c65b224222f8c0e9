import type { UnitCurrent } from '../simulated/phasors.ts';

/** A chord of the unit circle between two corners of a polygon inside it. */
export interface Chord {
  readonly from: UnitCurrent;
  readonly to: UnitCurrent;
  /** Direction of its middle. */
  readonly normal: UnitCurrent;
  /** How far it lies from the center. */
  readonly far: number;
}

const unit = ([re, im]: UnitCurrent): UnitCurrent => {
  const size = Math.sqrt(re * re + im * im);
  return [re / size, im / size];
};

/** The chord between two directions less than half a turn apart; where they are one, the tangent there. */
export function chord(from: UnitCurrent, to: UnitCurrent): Chord {
  const sum: UnitCurrent = [from[0] + to[0], from[1] + to[1]];
  return { from, to, normal: unit(sum), far: Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1]) / 2 };
}

const cross = (a: UnitCurrent, b: UnitCurrent): number => a[0] * b[1] - a[1] * b[0];

/**
 * The directions between which every sum of these phasors lies, counter-clockwise from the first to the second. They lie
 * within less than half a turn: the lines of one supply do.
 */
export function cone(phasors: readonly UnitCurrent[]): readonly [UnitCurrent, UnitCurrent] {
  const all = phasors.map(unit);
  const first = all.reduce((least, one) => (cross(least, one) < -SAME ? one : least));
  const last = all.reduce((most, one) => (cross(most, one) > SAME ? one : most));
  return [first, last];
}

const SAME = 1e-12;

/** The first polygon: five corners, or one tangent where all phasors have one direction. */
export function firstChords(phasors: readonly UnitCurrent[]): readonly Chord[] {
  const [first, last] = cone(phasors);
  if (cross(first, last) <= SAME) return [chord(first, first)];
  return halves(chord(first, last)).flatMap(halves);
}

const halves = ({ from, to, normal }: Chord): [Chord, Chord] => [chord(from, normal), chord(normal, to)];

/** Whether a chord is the circle itself to all purposes. */
export const isFine = ({ far }: Chord): boolean => far > 1 - 1e-9;

/** A chord in two, with a corner where a sum lies, or in the middle where that is too near an end. */
export function split(one: Chord, sum: UnitCurrent): [Chord, Chord] {
  const size = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1]);
  if (size === 0) return halves(one);
  const at = unit(sum);
  const width = cross(one.from, one.to);
  const inside = cross(one.from, at) > width / 8 && cross(at, one.to) > width / 8;
  return inside ? [chord(one.from, at), chord(at, one.to)] : halves(one);
}
