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
      let [step, cost, left, low] = [0, 0, 0, 0];
      do {
        if (next >= count) return END;
        step = FAR[Math.floor(next / ROUND)]!;
        const i = next % ROUND;
        cost = step + i / 100;
        // What follows costs more.
        if (size.isTooMuch?.(cost)) {
          next = count;
          return END;
        }
        next++;
        left = leftOf(i, x, off + step * 7, width);
        low = lowOf(i, y, off + step * 7, height);
      } while (size.isBarred?.(left, low));
      const at: Point2 = [left, low];
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

/** The left edge of the label at one of the twelve places at a distance from a point, best first. */
function leftOf(i: number, x: number, r: number, width: number): number {
  if (i === 0 || i === 2 || i === 3) return x + r;
  if (i === 1 || i === 4 || i === 5) return x - r - width;
  if (i === 6 || i === 7) return x + BESIDE;
  if (i === 8 || i === 9) return x - BESIDE - width;
  return x - width / 2;
}

/** And its lower edge. */
function lowOf(i: number, y: number, r: number, height: number): number {
  if (i < 2) return y - height / 2;
  if (i === 2 || i === 4) return y + BESIDE;
  if (i === 3 || i === 5) return y - BESIDE - height;
  return i % 2 === 0 ? y + r : y - r - height;
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
