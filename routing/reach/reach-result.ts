import type { Point2, Point3 } from '../site/site.ts';
import type { Direction } from '../site/vocabulary.ts';

/** One parking direction and one inlet of the vehicle in a served stall. Lengths in feet. */
export interface ReachCase {
  readonly direction: Direction;
  readonly inlet: string;
  /** Probability of the case: half or all of the direction, times the inlet's share of the shares. */
  readonly share: number;
  readonly needed: number;
  readonly available: number;
  readonly margin: number;
}

/** How low the slack cord hangs in the worst case, with all of `available` out. */
export interface Hang {
  /** Elevation of the lowest point of the cord, never below grade (0). */
  readonly low: number;
  /** Where on the ground that is. */
  readonly lowAt: Point2;
  /** The part of the cord's plan path over which it is lower than the walk headroom; null where it is nowhere. */
  readonly strip: { readonly from: Point2; readonly to: Point2; readonly length: number } | null;
}

/** Reach of one charger's cord to one of the stalls it serves. Lengths in feet. */
export interface Reach {
  readonly charger: string;
  readonly stall: string;
  /** Share of the cases with margin >= 0. */
  readonly coverage: number;
  readonly worst: ReachCase & {
    /** Plan path of the taut cord, retractor (else box) to inlet. */
    readonly path: readonly Point2[];
    readonly inletAt: Point3;
    readonly hang: Hang | null;
  };
  readonly cases: readonly ReachCase[];
  /** Id of the stall whose vehicle the retractor hangs over in any direction, else null. */
  readonly overVehicle: string | null;
}
