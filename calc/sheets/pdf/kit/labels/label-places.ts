import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import type { LabelPlace, LabelSize } from './best-label-place.ts';

/** Off a line through the middle of a symbol, points. */
const BESIDE = 3;

/** Steps of 7 points that a label may stand off. */
const FAR = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16];

/**
 * Places round a point: beside it first, then above and below, then farther off, with a leader, where `far` says so; all
 * with one leader where that is given. Places that cost more than the caller allows are left out.
 */
export function placesAround(
  [x, y]: Point2,
  off: number,
  size: LabelSize,
  far: boolean,
  always?: Pick<LabelPlace, 'leader' | 'own'>,
): IterableIterator<LabelPlace> {
  const { width, height } = size;
  const own: Point2 = [x, y];
  const count = (far ? FAR.length : 1) * ROUND;
  let next = 0;
  // Not a generator, which takes as long to go on as it takes to try the place that it gives.
  const places: IterableIterator<LabelPlace> = {
    [Symbol.iterator]: () => places,
    next: () => {
      if (next >= count) return END;
      const step = FAR[Math.floor(next / ROUND)]!;
      const i = next % ROUND;
      const cost = step + i / 100;
      // What follows costs more.
      if (size.isTooMuch?.(cost)) {
        next = count;
        return END;
      }
      next++;
      const at = cornerOf(i, x, y, off + step * 7, width, height);
      if (always !== undefined) return { done: false, value: { at, turn: 0, cost, ...always } };
      if (step < 2) return { done: false, value: { at, turn: 0, cost } };
      return { done: false, value: { at, turn: 0, cost, leader: own } };
    },
  };
  return places;
}

/** Places at one distance. */
const ROUND = 12;
const END: IteratorReturnResult<undefined> = { done: true, value: undefined };

/** The lower left corner of the label at one of the twelve places at a distance from a point, best first. */
function cornerOf(i: number, x: number, y: number, r: number, width: number, height: number): Point2 {
  switch (i) {
    case 0:
      return [x + r, y - height / 2];
    case 1:
      return [x - r - width, y - height / 2];
    case 2:
      return [x + r, y + BESIDE];
    case 3:
      return [x + r, y - BESIDE - height];
    case 4:
      return [x - r - width, y + BESIDE];
    case 5:
      return [x - r - width, y - BESIDE - height];
    case 6:
      return [x + BESIDE, y + r];
    case 7:
      return [x + BESIDE, y - r - height];
    case 8:
      return [x - BESIDE - width, y + r];
    case 9:
      return [x - BESIDE - width, y - r - height];
    case 10:
      return [x - width / 2, y + r];
    default:
      return [x - width / 2, y - r - height];
  }
}

/** Shares of a line at which a label may stand. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];

/** Places along a line, on either side of it, the middle first; turned to be read from below or from the right. */
export function* placesAlong(
  from: Point2,
  to: Point2,
  off: number,
  { width, height }: LabelSize,
): Generator<LabelPlace> {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1) return;
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const upright = angle > 90 + 1e-6 ? angle - 180 : angle <= -90 + 1e-6 ? angle + 180 : angle;
  const turn = Math.round(upright * 1e6) / 1e6;
  const [ux, uy] = direction(turn);
  for (const [i, share] of SHARES.entries()) {
    if (2 * Math.min(share, 1 - share) * length < width) continue;
    const middle: Point2 = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    for (const [k, up] of [off, -off - height].entries()) {
      const back = -width / 2;
      const at: Point2 = [middle[0] + back * ux - up * uy, middle[1] + back * uy + up * ux];
      yield { at, turn, cost: (2 * i + k) / 50 };
    }
  }
}
