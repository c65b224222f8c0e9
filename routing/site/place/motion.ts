import type { Point2, Point3 } from '../../plane/point.ts';
import { tidy } from '../file/tidy.ts';

/** A rigid motion of the plane, with a lift. */
export interface Motion {
  readonly point: (at: Point2) => Point2;
  /** The direction, degrees, of what pointed this way before. */
  readonly direction: (degrees: number) => number;
  readonly lift: number;
  /** Left and right change places. */
  readonly mirrors: boolean;
}

export function inSpace([x, y, z]: Point3, motion: Motion): Point3 {
  const [mx, my] = motion.point([x, y]);
  return [mx, my, motion.lift === 0 ? z : tidy(z + motion.lift)];
}

/** Degrees from 0 to 360. */
export const wholeTurn = (degrees: number): number => tidy(((degrees % 360) + 360) % 360);

/**
 * The rotation of a rectangle after a motion; absent where it was and is none. Turned half round it covers the same
 * ground, but what has a face (its local -y) must keep it in front.
 */
export function rectangleTurn(was: number | undefined, motion: Motion): { readonly rotation?: number } {
  const now = motion.mirrors ? wholeTurn(motion.direction(was ?? 0) + 180) : motion.direction(was ?? 0);
  return was === undefined && now === 0 ? {} : { rotation: now };
}
