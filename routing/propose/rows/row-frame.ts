import type { Point2 } from '../../site/site.ts';

/** A line drawn in the plan with a side: distances `s` along it and `t` away from it to that side. Feet. */
export interface RowFrame {
  readonly at: (s: number, t: number) => Point2;
  /** The compass of the frame as angles in the plan, degrees from 0 up to 360: of `ahead` along and `aside` away. */
  readonly heading: (ahead: number, aside: number) => number;
}

export type Side = 'left' | 'right';

/** The frame of a line from `from` towards `to`, its side to the left or right as one goes. RangeError where it has no length. */
export function rowFrame(from: Point2, to: Point2, side: Side): RowFrame {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) throw new RangeError('a row needs a line of some length');
  const u: Point2 = [dx / length, dy / length];
  const n: Point2 = side === 'left' ? [-u[1], u[0]] : [u[1], -u[0]];
  return frameOf(from, u, n);
}

/** A frame begun `s` along and `t` aside of another, turned to look back at it: its side is the other's opposite. */
export const facing = (frame: RowFrame, s: number, t: number): RowFrame => ({
  at: (along, aside) => frame.at(s + along, t - aside),
  heading: (ahead, aside) => frame.heading(ahead, -aside),
});

/** The same frame begun `s` further along. */
export const further = (frame: RowFrame, s: number): RowFrame => ({
  ...frame,
  at: (along, aside) => frame.at(s + along, aside),
});

function frameOf(origin: Point2, u: Point2, n: Point2): RowFrame {
  return {
    at: (s, t) => [tidy(origin[0] + s * u[0] + t * n[0]), tidy(origin[1] + s * u[1] + t * n[1])],
    heading: (ahead, aside) => {
      const degrees = (Math.atan2(ahead * u[1] + aside * n[1], ahead * u[0] + aside * n[0]) * 180) / Math.PI;
      return tidy(((degrees % 360) + 360) % 360) % 360;
    },
  };
}

/** A billionth of a foot is rounding: a row along a kerb drawn square keeps its round figures. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
