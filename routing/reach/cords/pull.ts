import { hypot2 } from '../../plane/hypot.ts';
import type { Point2, Point3 } from '../../site/site.ts';
import { catenary } from './catenary.ts';
import { lengthAlong } from './plan-path.ts';

/** The force in a cord where it leaves its retractor. */
export interface RetractorPull {
  /** In the cord, pounds. */
  readonly pounds: number;
  /** Parts of it: straight down, and sideways. */
  readonly down: number;
  readonly sideways: number;
  /** Degrees that the cord leaves from plumb. */
  readonly fromPlumb: number;
  /** Which way it leaves in the plan, degrees counter-clockwise from +x; null where it hangs straight down. */
  readonly heading: number | null;
  /** It is as much as a person pulls: the cord is all but taut. */
  readonly taut: boolean;
}

/** A person carries a connector no farther than a pull of this, pounds, lets them. Common practice, no source. */
export const HAND = 50;

/**
 * The force in a cord at its retractor when its connector is at an inlet and all of it is out: the catenary over the plan
 * path of the taut cord, unrolled where that bends round a vehicle. `available` feet of cord, `pounds` a foot. Where the
 * curve would go below grade the cord lies on the ground, and the retractor holds what hangs down to it. No more than a
 * person pulls, for a cord that is all but taut would be pulled without bound. Null where the cord is too short to arrive.
 */
export function pullOf(
  path: readonly Point2[],
  from: number,
  to: number,
  available: number,
  poundsPerFoot: number,
): RetractorPull | null {
  const span = lengthAlong(path);
  const drop = from - to;
  if (path.length === 0 || available < hypot2(span, drop) - 1e-9) return null;
  const curve = catenary(available, span, drop);
  if (curve === null) {
    if (span > 1e-9) return bounded(span, drop, Number.POSITIVE_INFINITY, path);
    // The inlet is straight below: the cord goes down and comes up again.
    return plumb(poundsPerFoot * Math.min(from, (available + drop) / 2));
  }
  const { a, bottom } = curve;
  const rise = 2 * a * Math.sinh(bottom / (2 * a)) ** 2;
  if (bottom > 0 && bottom < span && from - rise < 0) return plumb(poundsPerFoot * Math.max(0, from));
  const [sideways, down] = [poundsPerFoot * a, poundsPerFoot * a * Math.sinh(bottom / a)];
  return bounded(sideways, down, hypot2(sideways, down), path);
}

const plumb = (pounds: number): RetractorPull => ({
  pounds,
  down: pounds,
  sideways: 0,
  fromPlumb: 0,
  heading: null,
  taut: false,
});

/** A force of so many pounds in the direction of its parts. */
function bounded(sideways: number, down: number, pounds: number, path: readonly Point2[]): RetractorPull {
  const direction = hypot2(sideways, down);
  const force = Math.min(HAND, pounds);
  return {
    pounds: force,
    down: (force * down) / direction,
    sideways: (force * sideways) / direction,
    fromPlumb: degrees(Math.atan2(sideways, down)),
    heading: headingOf(path),
    taut: pounds > HAND,
  };
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;

function headingOf(path: readonly Point2[]): number | null {
  const [first, next] = path;
  if (first === undefined || next === undefined) return null;
  const heading = degrees(Math.atan2(next[1] - first[1], next[0] - first[0]));
  return heading < 0 ? heading + 360 : heading;
}

/** How a connector hangs by its retractor: how high where nothing is taken up, and what the retractor has to hold. */
export interface CordRest {
  /** Elevation of the connector where the cord hangs down at its whole length, feet; 0 on the ground. */
  readonly free: number;
  /** Feet of cord that the retractor takes up to hold it at its rest height, and the pounds that then hang; null without one. */
  readonly held: { readonly takesUp: number; readonly pounds: number } | null;
}

/** How the connector of a drop rests that hangs from `from`; `connector` is its weight, pounds. */
export function restOf(
  from: Point3,
  available: number,
  restHeight: number | undefined,
  poundsPerFoot: number,
  connector: number,
): CordRest {
  const free = Math.max(0, from[2] - available);
  if (restHeight === undefined || restHeight >= from[2]) return { free, held: null };
  const hanging = from[2] - restHeight;
  return {
    free,
    held: { takesUp: Math.max(0, available - hanging), pounds: poundsPerFoot * hanging + connector },
  };
}
