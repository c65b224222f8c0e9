import type { Box } from '../../../plane/box.ts';
import { boxIndex, positionsIn } from '../../../plane/box-index.ts';
import { apart, length2 } from '../../../plane/distance.ts';
import { stallRectangle } from '../../place/stall-rectangle.ts';
import type { Point2, Stall } from '../../site.ts';
import type { ImportedLine } from '../imported.ts';

/** A stripe is painted twice at most this far from the side of its stall, feet: half the gap of a double stripe, and a bit. */
const DOUBLE = 1.6;
/** A line at the head or the entry of a stall, and the end of one at the end of another, feet. */
const ON = 0.6;
/** Between the points of a line that are looked at, feet. */
const STEP = 1;
/** Sine of the angle by which a stripe may lie off the side of its stall. */
const PARALLEL = 0.05;

interface Side {
  readonly a: Point2;
  readonly b: Point2;
  readonly reach: number;
  /** Lines along it have to point as it does. */
  readonly stripe: boolean;
}

/**
 * Whether a line only draws what the stalls say already: the line at their heads, the second stripe of a pair, a side
 * that was drawn piece by piece. `stripes` are the lines that stalls were found between. Lengths in feet.
 */
export function drawnAlong(
  stalls: readonly Omit<Stall, 'id'>[],
  stripes: readonly ImportedLine[],
): (line: ImportedLine) => boolean {
  const sides = boxIndex(stalls.flatMap(sidesOf), boxOf);
  const ends = boxIndex(
    stripes.flatMap(({ points }) => [points[0]!, points.at(-1)!]),
    (at) => around(at, ON),
  );
  const onSide = (at: Point2, [ux, uy]: Point2): boolean =>
    positionsIn(sides, around(at, 0)).some((i) => {
      const { a, b, reach, stripe } = sides.items[i]!;
      if (off(at, a, b) > reach) return false;
      const length = apart(a, b);
      return !stripe || Math.abs(((b[0] - a[0]) * uy - (b[1] - a[1]) * ux) / length) < PARALLEL;
    });
  const onEnd = (at: Point2): boolean => positionsIn(ends, around(at, 0)).some((i) => apart(ends.items[i]!, at) <= ON);
  return ({ points, closed }) => {
    if (closed || points.length < 2) return false;
    // The line at the heads of slanted stalls lies off their sides, and ends where their stripes end.
    if (points.length === 2 && onEnd(points[0]!) && onEnd(points[1]!)) return true;
    return points.slice(1).every((to, i) => stepsOn(points[i]!, to, onSide));
  };
}

function sidesOf(stall: Omit<Stall, 'id'>): readonly Side[] {
  const [entryRight, headRight, headLeft, entryLeft] = stallRectangle({ id: '', ...stall });
  return [
    { a: entryRight, b: headRight, reach: DOUBLE, stripe: true },
    { a: entryLeft, b: headLeft, reach: DOUBLE, stripe: true },
    { a: headRight, b: headLeft, reach: ON, stripe: false },
    { a: entryRight, b: entryLeft, reach: ON, stripe: false },
  ];
}

/** Whether a test holds at each step from one point to another. */
function stepsOn(from: Point2, to: Point2, holds: (at: Point2, along: Point2) => boolean): boolean {
  const length = apart(from, to);
  if (length === 0) return true;
  const along: Point2 = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const steps = Math.ceil(length / STEP);
  for (let i = 0; i <= steps; i++) {
    const by = (length * i) / steps;
    if (!holds([from[0] + along[0] * by, from[1] + along[1] * by], along)) return false;
  }
  return true;
}

/** Distance of a point from a stretch, feet. */
function off([x, y]: Point2, [ax, ay]: Point2, [bx, by]: Point2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const part = Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy), 0), 1);
  return length2(x - ax - part * dx, y - ay - part * dy);
}

const around = ([x, y]: Point2, by: number): Box => ({ minX: x - by, minY: y - by, maxX: x + by, maxY: y + by });

const boxOf = ({ a, b, reach }: Side): Box => ({
  minX: Math.min(a[0], b[0]) - reach,
  minY: Math.min(a[1], b[1]) - reach,
  maxX: Math.max(a[0], b[0]) + reach,
  maxY: Math.max(a[1], b[1]) + reach,
});
