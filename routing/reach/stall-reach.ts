import { kept } from '../kept/kept.ts';
import { type Box, joinedBox, NO_BOX } from '../plane/box.ts';
import { length2 } from '../plane/distance.ts';
import type { Obstacle } from '../plane/obstacle.ts';
import type { Direction } from '../site/schema/vocabulary.ts';
import type { Point2, Point3, Stall, Vehicle } from '../site/site.ts';
import { directionsOf, inletAt } from '../standing/parked.ts';
import { cordLength } from './cord-start.ts';
import { type Cord, cordsTo } from './cords.ts';
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
  /** Nose-in before back-in, inlets in their class's order. */
  readonly cases: readonly ReachCase[];
  /** The cord of each case; null where no way leads to its inlet. */
  readonly cords: readonly (Cord | null)[];
  readonly coverage: number;
  /** What lies outside this box had no say in the result. */
  readonly seen: Box;
}

/** An inlet of a vehicle that stands in a stall one way. */
export interface InletCase {
  readonly direction: ReachCase['direction'];
  readonly inlet: string;
  readonly share: number;
  readonly at: Point3;
}

/** Every direction that a stall allows and every inlet of its vehicle, with the probability of each. */
export function inletCases(stall: Stall, vehicle: Vehicle, headClearance: number): InletCase[] {
  return likelyCases(vehicle, directionsOf(stall)).map(({ direction, inlet, share }) => ({
    direction,
    inlet: inlet.name,
    share,
    at: inletAt(stall, vehicle, headClearance, direction, inlet),
  }));
}

/** The same for all stalls in which a class of vehicle may stand in the same directions. */
const likelyCases = kept((vehicle: Vehicle, directions: readonly Direction[]) => {
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
 * Reach of a cord to one stall: `needed` is the taut plan length round vehicles and columns with the fall in elevation,
 * by `cordLength`. Directions are equally likely and inlets go by their share (equally, where all shares are zero).
 */
export function stallReach(
  start: CordStart,
  inlets: readonly InletCase[],
  near: (box: Box) => readonly Obstacle[],
): StallReach {
  const from: Point2 = [start.from[0], start.from[1]];
  const { cords, seen } = cordsTo(
    from,
    inlets.map(({ at }): Point2 => [at[0], at[1]]),
    near,
  );
  const { available } = start;
  const cases = inlets.map(({ direction, inlet, share, at }, i): ReachCase => {
    const cord = cords[i]!;
    const needed = cord ? cordLength(start, cord.length, at[2]) : null;
    return { direction, inlet, share, needed, available, margin: needed === null ? null : available - needed };
  });
  return { cases, cords, coverage: coverageOf(cases), seen };
}

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
    const { cords, seen: box } = cordsTo([x, y], [[one.at[0], one.at[1]]], near);
    seen = joinedBox(seen, box);
    const cord = cords[0];
    if (cord && cordLength(start, cord.length, one.at[2]) <= start.available + MARGIN_TIE) continue;
    short += one.share;
    if (short > spare) return { enough: false, seen };
  }
  return { enough: true, seen };
}

/** The share of the cases that the cord reaches, exactly 1 where none that can occur is short. */
export function coverageOf(cases: readonly Pick<ReachCase, 'share' | 'margin'>[]): number {
  let covered = 0;
  let short = 0;
  for (const { share, margin } of cases) {
    if (margin !== null && margin >= -MARGIN_TIE) covered += share;
    else short += share;
  }
  return short === 0 ? 1 : Math.min(1, covered);
}

/** Place of the case with the least margin, one without a way before all; of equal ones the first. */
export function worstAt(cases: readonly Pick<ReachCase, 'margin'>[]): number {
  let worst = 0;
  for (let i = 1; i < cases.length; i++) if (key(cases[i]!) < key(cases[worst]!) - MARGIN_TIE) worst = i;
  return worst;
}

/** The case with the least margin, likewise. */
export const worstOf = <C extends Pick<ReachCase, 'margin'>>(cases: readonly C[]): C => cases[worstAt(cases)]!;

const key = ({ margin }: Pick<ReachCase, 'margin'>): number => margin ?? Number.NEGATIVE_INFINITY;
