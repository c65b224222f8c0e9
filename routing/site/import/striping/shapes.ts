import { apart } from '../../../plane/distance.ts';
import type { Point2 } from '../../site.ts';
import type { ImportedLine } from '../imported.ts';

/** A four-sided stall shape: rectangle, or skewed as its row is. */
export interface StallShape {
  readonly middle: Point2;
  /** Square to the stripes, feet. */
  readonly width: number;
  /** Along the stripes, feet. */
  readonly depth: number;
  /** Of the stripes, degrees. */
  readonly degrees: number;
}

/** Sides of stalls that lots are striped with: compact to van, parallel included. Feet. */
export const STALL_WIDTH = [7, 13] as const;
export const STALL_DEPTH = [14, 24] as const;
/** Corners of a rectangle may be off a right angle by this share of its sides. */
const ASKEW = 0.03;
/** Stripes stand no more aslant to their row than this, as the sine of the angle: 30 degrees. */
const LEAST_SINE = 0.5;
/** Points nearer than this, feet, are one. */
const SAME = 0.02;

export const isWithin = (value: number, [least, most]: readonly [number, number], slack = 0): boolean =>
  value >= least - slack && value <= most + slack;

/** Without points that repeat the one before, and closed where it comes back to its start. */
export function cleaned(line: ImportedLine): ImportedLine {
  const own = line.points.filter((at, i) => i === 0 || apart(at, line.points[i - 1]!) > SAME);
  const back = own.length > 2 && apart(own[0]!, own.at(-1)!) <= SAME;
  return { ...line, points: back ? own.slice(0, -1) : own, closed: line.closed || back };
}

/** Without corners that lie on the line between their neighbours. */
export function realCorners(points: readonly Point2[]): readonly Point2[] {
  return points.filter((at, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    const after = points[(i + 1) % points.length]!;
    const cross = (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0]);
    return Math.abs(cross) > 1e-3 * apart(before, at) * apart(at, after);
  });
}

/** A four-sided figure by its middle, its sides, each the mean of two, and the sine of the angle between them. */
export interface FourSided {
  readonly middle: Point2;
  readonly along: number;
  readonly across: number;
  /** Of the first side and of the second, degrees. */
  readonly degrees: number;
  readonly acrossDegrees: number;
  readonly sine: number;
  readonly square: boolean;
}

/** A closed line of four corners whose opposite sides are alike; null for any other. `rounding` is that of its corners, feet. */
export function fourSided(points: readonly Point2[], rounding: number): FourSided | null {
  const corners = realCorners(points);
  if (corners.length !== 4) return null;
  const [a, b, c, d] = corners as readonly [Point2, Point2, Point2, Point2];
  const off = Math.hypot(a[0] - b[0] + c[0] - d[0], a[1] - b[1] + c[1] - d[1]);
  const side: Point2 = [(b[0] - a[0] + c[0] - d[0]) / 2, (b[1] - a[1] + c[1] - d[1]) / 2];
  const other: Point2 = [(c[0] - b[0] + d[0] - a[0]) / 2, (c[1] - b[1] + d[1] - a[1]) / 2];
  const [along, across] = [Math.hypot(...side), Math.hypot(...other)];
  if (!(along > 0 && across > 0) || off > ASKEW * Math.min(along, across) + 4 * rounding) return null;
  const dot = side[0] * other[0] + side[1] * other[1];
  return {
    middle: [(a[0] + b[0] + c[0] + d[0]) / 4, (a[1] + b[1] + c[1] + d[1]) / 4],
    along,
    across,
    degrees: (Math.atan2(side[1], side[0]) * 180) / Math.PI,
    acrossDegrees: (Math.atan2(other[1], other[0]) * 180) / Math.PI,
    sine: Math.abs(side[0] * other[1] - side[1] * other[0]) / (along * across),
    square: Math.abs(dot) <= ASKEW * along * across + 2 * rounding * (along + across),
  };
}

/** The stall that a four-sided figure is; null where its sides are not those of one. */
export function stallShape(figure: FourSided, rounding: number): StallShape | null {
  const { middle, along, across, degrees, acrossDegrees, sine, square } = figure;
  const slack = 2 * rounding;
  if (square) {
    const [width, depth] = [Math.min(along, across), Math.max(along, across)];
    const fits = isWithin(width, STALL_WIDTH, slack) && isWithin(depth, STALL_DEPTH, slack);
    return fits ? { middle, width, depth, degrees: along >= across ? degrees : acrossDegrees } : null;
  }
  if (sine < LEAST_SINE) return null;
  // Its stripes are the sides that are as long as a stall is deep, and as far apart as it is wide.
  const ways = [
    { depth: along, width: across * sine, degrees },
    { depth: across, width: along * sine, degrees: acrossDegrees },
  ].filter(({ depth, width }) => isWithin(depth, STALL_DEPTH, slack) && isWithin(width, STALL_WIDTH, slack));
  const [way] = ways.sort((a, b) => b.depth - a.depth);
  return way ? { middle, ...way } : null;
}
