import { kept } from '../kept/kept.ts';
import { type Box, joinedBox, NO_BOX } from '../plane/box.ts';
import { length2 } from '../plane/distance.ts';
import type { Obstacle } from '../plane/obstacle.ts';
import type { Direction } from '../site/schema/vocabulary.ts';
import type { Inlet, Point3, Stall, Vehicle } from '../site/site.ts';
import { directionsOf, inletAt } from '../standing/parked.ts';
import { cordLength } from './cords/cord-start.ts';
import { type Cords, cordsTo } from './cords/cords.ts';
import type { ReachCase } from './reach-result.ts';

/** Margins closer to zero than this are zero: rounding must not fail a cord that is just long enough, turned or moved. */
export const MARGIN_TIE = 1e-9;

/** Where a cord hangs, and how much of it can be let out from there. */
export interface CordStart {
  /** Retractor, else box. */
  readonly from: Point3;
  /** Feet. */
  readonly available: number;
  /** It lies along the ground from the foot of a pedestal. */
  readonly onGround: boolean;
}

export interface StallReach {
  readonly cords: Cords;
  /** Feet of cord to each inlet; infinite where no way leads there. */
  readonly needed: readonly number[];
  readonly coverage: number;
  /** Place of the case with the least margin, one without a way before all; of equal ones the first. */
  readonly worst: number;
  /** Its margin; null where no way leads there. */
  readonly margin: number | null;
}

/** An inlet of a vehicle that stands in a stall one way. */
export interface InletCase {
  readonly direction: Direction;
  readonly inlet: string;
  readonly share: number;
  readonly at: Point3;
}

/** One way to stand and one inlet, with how likely it is: the same for all stalls that are alike. */
export interface LikelyCase {
  readonly direction: Direction;
  readonly inlet: Inlet;
  readonly share: number;
}

/** Every direction that a stall allows and every inlet of its vehicle, nose-in before back-in, with the probability of each. */
export const casesIn = (stall: Stall, vehicle: Vehicle): readonly LikelyCase[] =>
  likelyCases(vehicle, directionsOf(stall));

/** Where the inlet of each case is. */
export function inletsAt(
  stall: Stall,
  vehicle: Vehicle,
  headClearance: number,
  cases: readonly LikelyCase[],
): readonly Point3[] {
  const at = new Array<Point3>(cases.length);
  for (let i = 0; i < cases.length; i++)
    at[i] = inletAt(stall, vehicle, headClearance, cases[i]!.direction, cases[i]!.inlet);
  return at;
}

/** Both together. */
export function inletCases(stall: Stall, vehicle: Vehicle, headClearance: number): InletCase[] {
  return casesIn(stall, vehicle).map(({ direction, inlet, share }) => ({
    direction,
    inlet: inlet.name,
    share,
    at: inletAt(stall, vehicle, headClearance, direction, inlet),
  }));
}

const likelyCases = kept((vehicle: Vehicle, directions: readonly Direction[]): readonly LikelyCase[] => {
  const total = vehicle.inlets.reduce((sum, inlet) => sum + inlet.share, 0);
  return directions.flatMap((direction) =>
    vehicle.inlets.map((inlet) => ({
      direction,
      inlet,
      share: (total > 0 ? inlet.share / total : 1 / vehicle.inlets.length) / directions.length,
    })),
  );
});

/**
 * Reach of a cord to the inlets of one stall: `needed` is the taut plan length round vehicles and columns with the fall in
 * elevation, by `cordLength`. Directions are equally likely and inlets go by their share (equally, where all shares are
 * zero).
 */
export function stallReach(
  start: CordStart,
  inlets: readonly Pick<InletCase, 'share'>[],
  at: readonly Point3[],
  near: (box: Box) => readonly Obstacle[],
): StallReach {
  const cords = cordsTo([start.from[0], start.from[1]], at, near);
  const { lengths } = cords;
  const needed = new Array<number>(at.length);
  const margins = new Array<number>(at.length);
  for (let i = 0; i < at.length; i++) {
    needed[i] = cordLength(start, lengths[i]!, at[i]![2]);
    margins[i] = start.available - needed[i]!;
  }
  const worst = worstAt(margins);
  const margin = orNone(margins[worst]!);
  return { cords, needed, coverage: coverageOf(inlets, margins), worst, margin };
}

/** What a cord that leaves so much comes to in each case. */
export const reachCases = (
  cases: readonly LikelyCase[],
  needed: readonly number[],
  available: number,
): readonly ReachCase[] =>
  cases.map(({ direction, inlet: { name: inlet }, share }, i): ReachCase => {
    const feet = needed[i]!;
    return { direction, inlet, share, needed: orNone(feet), available, margin: orNone(available - feet) };
  });

/** Null for what is infinite: no way leads there. */
const orNone = (feet: number): number | null => (Number.isFinite(feet) ? feet : null);

/**
 * Whether a cord covers as large a share of a stall's cases as is wanted. The same as by `stallReach`, but it looks at one
 * inlet at a time, those farthest off first, and stops at the first that settles it.
 */
export function covers(
  start: CordStart,
  inlets: readonly InletCase[],
  near: (box: Box) => readonly Obstacle[],
  wanted: number,
): { readonly enough: boolean; readonly seen: Box } {
  const [x, y] = start.from;
  const crow = ({ at }: InletCase): number => cordLength(start, length2(at[0] - x, at[1] - y), at[2]);
  // No cord is shorter than the straight line, so those that are too far by it need no look at the vehicles.
  const spare = 1 - wanted + MARGIN_TIE;
  let short = 0;
  let seen = NO_BOX;
  for (const one of inlets) if (crow(one) > start.available + MARGIN_TIE) short += one.share;
  if (short > spare) return { enough: false, seen };
  for (const one of inlets.toSorted((a, b) => crow(b) - crow(a))) {
    if (crow(one) > start.available + MARGIN_TIE) continue;
    const { lengths, seen: box } = cordsTo([x, y], [one.at], near);
    seen = joinedBox(seen, box);
    if (cordLength(start, lengths[0]!, one.at[2]) <= start.available + MARGIN_TIE) continue;
    short += one.share;
    if (short > spare) return { enough: false, seen };
  }
  return { enough: true, seen };
}

/** The share of the cases that the cord reaches, exactly 1 where none that can occur is short; a margin is infinite where no way leads. */
export function coverageOf(cases: readonly Pick<InletCase, 'share'>[], margins: readonly number[]): number {
  let covered = 0;
  let short = 0;
  for (let i = 0; i < cases.length; i++) {
    if (margins[i]! >= -MARGIN_TIE) covered += cases[i]!.share;
    else short += cases[i]!.share;
  }
  return short === 0 ? 1 : Math.min(1, covered);
}

/** Place of the least margin, one without a way before all; of equal ones the first. */
export function worstAt(margins: readonly number[]): number {
  let worst = 0;
  for (let i = 1; i < margins.length; i++) if (margins[i]! < margins[worst]! - MARGIN_TIE) worst = i;
  return worst;
}
