import { direction } from '../../plane/direction.ts';
import { type Motion, wholeTurn } from '../../site/place/motion.ts';
import type { Point2 } from '../../site/site.ts';

/** How a lot is turned, counter-clockwise, and whether it is mirrored after that, left for right. */
export interface Turn {
  readonly degrees: number;
  readonly mirrors: boolean;
}

/** Places are rounded so, in the units of the file: what was drawn at an odd angle has them to no more. */
const SQUARE = 1e4;
const ODD = 1e3;
/** And so where they are turned back by an odd angle, so that what was in one line stays so. */
const BACK = 1e6;
/** Directions are rounded so, degrees, for the angle of a lot is known to no more. */
const DEGREES = 1e3;

/** The motion that turns a lot so and takes a corner, which is a place after the turn, to zero; and the motion back. */
export function motionTo(
  { degrees, mirrors }: Turn,
  [x0, y0]: Point2,
): { readonly into: Motion; readonly back: Motion } {
  const [c, s] = direction(degrees);
  const side = mirrors ? -1 : 1;
  const isSquare = degrees % 90 === 0;
  const [fine, backTo] = isSquare ? [SQUARE, SQUARE] : [ODD, BACK];
  const round = (value: number, parts: number): number => Math.round(value * parts) / parts + 0;
  const direct = (was: number): number => (mirrors ? 180 - was - degrees : was + degrees);
  return {
    into: {
      point: ([x, y]) => [round(side * (c * x - s * y) - x0, fine), round(s * x + c * y - y0, fine)],
      direction: (was) => wholeTurn(isSquare ? direct(was) : round(direct(was), DEGREES)),
      lift: 0,
      mirrors,
    },
    back: {
      point: ([x, y]) => {
        const [u, v] = [side * (x + x0), y + y0];
        return [round(c * u + s * v, backTo), round(c * v - s * u, backTo)];
      },
      direction: (was) => wholeTurn(mirrors ? 180 - was - degrees : was - degrees),
      lift: 0,
      mirrors,
    },
  };
}

/** Where a place comes to lie by a turn alone. */
export function turnedBy({ degrees, mirrors }: Turn): (at: Point2) => Point2 {
  const [c, s] = direction(degrees);
  const side = mirrors ? -1 : 1;
  return ([x, y]) => [side * (c * x - s * y), s * x + c * y];
}
