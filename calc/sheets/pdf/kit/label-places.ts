import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { LabelPlace, LabelSize } from './best-label-place.ts';

/** Off a line through the middle of a symbol, points. */
const BESIDE = 3;

/** Steps of 7 points that a label may stand off. */
const FAR = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16];

/**
 * Places round a point: beside it first, then above and below, then farther off, with a leader, where `far` says so; all
 * with one leader where that is given.
 */
export function* placesAround(
  [x, y]: Point2,
  off: number,
  { width, height }: LabelSize,
  far: boolean,
  always?: Pick<LabelPlace, 'leader' | 'own'>,
): Generator<LabelPlace> {
  for (const step of far ? FAR : [0]) {
    const r = off + step * 7;
    const leader = always ?? (step < 2 ? {} : { leader: [x, y] as Point2 });
    const corners: readonly Point2[] = [
      [x + r, y - height / 2],
      [x - r - width, y - height / 2],
      [x + r, y + BESIDE],
      [x + r, y - BESIDE - height],
      [x - r - width, y + BESIDE],
      [x - r - width, y - BESIDE - height],
      [x + BESIDE, y + r],
      [x + BESIDE, y - r - height],
      [x - BESIDE - width, y + r],
      [x - BESIDE - width, y - r - height],
      [x - width / 2, y + r],
      [x - width / 2, y - r - height],
    ];
    for (let i = 0; i < corners.length; i++) yield { at: corners[i]!, turn: 0, cost: step + i / 100, ...leader };
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
