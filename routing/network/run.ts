import type { Point3 } from '../site/site.ts';

/** The way of one charger's branch from the equipment that feeds it to its box. Lengths in feet. */
export interface Run {
  readonly charger: string;
  readonly drop: string;
  readonly from: string;
  /** Developed length, tap + raceway + tap; null where there is no run. */
  readonly length: number | null;
  /** Developed length plus the allowances at both ends; null where there is no run. */
  readonly conductorLength: number | null;
  readonly taps: { readonly equipment: number; readonly box: number } | null;
  /** Entry, tap point, raceway vertices passed, tap point, box; empty where there is no run. */
  readonly path: readonly Point3[];
  /** Ids of the raceways used, in order of travel. */
  readonly raceways: readonly string[];
  /** Raceway id of each leg of `path` (leg i goes from path[i] to path[i + 1]); null on a tap or a joint's gap. */
  readonly legs: readonly (string | null)[];
  /** Number of changes of direction along the path. */
  readonly bends: number;
  /** Sum of their angles, degrees. */
  readonly bendDegrees: number;
  /** There is a run, and its conductor length is within the branch limit. */
  readonly ok: boolean;
}
