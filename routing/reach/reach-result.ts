import type { Direction } from '../site/schema/vocabulary.ts';
import type { Point2, Point3 } from '../site/site.ts';

/** One parking direction and one inlet of the vehicle in a served stall. Lengths in feet. */
export interface ReachCase {
  readonly direction: Direction;
  readonly inlet: string;
  /** Probability of the case: half or all of the direction, times the inlet's share of the shares. */
  readonly share: number;
  /** Taut length from the retractor, else the box; null where no way leads to the inlet, however long the cord. */
  readonly needed: number | null;
  readonly available: number;
  /** `available - needed`; null where no way leads to the inlet. */
  readonly margin: number | null;
}

/** How low the slack cord hangs in the worst case, with all of `available` out. */
export interface Hang {
  /** Elevation of the lowest point of the cord, never below grade (0). */
  readonly low: number;
  /** Where on the ground that is. */
  readonly lowAt: Point2;
  /** The part of the cord's plan path over which it is lower than the walk headroom; null where it is nowhere. */
  readonly strip: {
    readonly from: Point2;
    readonly to: Point2;
    readonly length: number;
    /** From `from` to `to`, with the corners between. */
    readonly path: readonly Point2[];
  } | null;
}

/** Reach of one charger's cord to one of the stalls it serves. Lengths in feet. */
export interface Reach {
  readonly charger: string;
  readonly stall: string;
  /** Share of the cases with margin >= 0; exactly 1 where no case that can occur is short. */
  readonly coverage: number;
  /** The case with the least margin; of equal ones the first in the order of `cases`. */
  readonly worst: ReachCase & {
    /** Plan path of the taut cord, retractor (else box) to inlet; empty where no way leads there. */
    readonly path: readonly Point2[];
    readonly inletAt: Point3;
    /** Null where the cord does not arrive. */
    readonly hang: Hang | null;
  };
  /** Nose-in before back-in, the inlets in the order of their vehicle class. */
  readonly cases: readonly ReachCase[];
  /** Id of the stall whose vehicle the retractor (else box) hangs over, else null. */
  readonly overVehicle: string | null;
}
