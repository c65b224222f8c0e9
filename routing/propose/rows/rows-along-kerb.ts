import { twiceAreaOf } from '../../plane/area.ts';
import { apart } from '../../plane/distance.ts';
import { insideOf, type Obstacle, obstacleOf, spansInside } from '../../plane/obstacle.ts';
import { overlapDepth } from '../../plane/overlap-depth.ts';
import type { Point2, Stall } from '../../site/site.ts';

/** Sides of the stalls and the aisle that they are driven into from, feet. */
export interface KerbShape {
  readonly width: number;
  readonly depth: number;
  readonly aisle: number;
}

/** A row of stalls that head at a kerb. */
export interface KerbRow {
  readonly from: Point2;
  readonly to: Point2;
  readonly stalls: readonly Omit<Stall, 'id'>[];
}

/** Fewer are no row. */
const LEAST_STALLS = 3;
/** A kerb turns here: corners that turn by less, degrees, are a bend of it. */
const BEND = 3;
/** Stalls may touch the kerb and each other, feet. */
const TOUCH = 0.3;
const MOST_EDGES = 400;

/**
 * A first row along each kerb of a lot: square stalls that head at it, as many as fit with an aisle before them, none
 * on what stands in the lot or on the row of a longer kerb. Feet; the outline runs either way.
 */
export function rowsAlongKerb(
  outline: readonly Point2[],
  { width, depth, aisle }: KerbShape,
  standing: readonly (readonly Point2[])[] = [],
): readonly KerbRow[] {
  const whole = twiceAreaOf(outline) < 0 ? [...outline].reverse() : outline;
  const ring = straightened(whole);
  if (ring.length < 3 || ring.length > MOST_EDGES) return [];
  const lot = obstacleOf(whole);
  const others = standing.map(obstacleOf);
  const taken: { readonly stall: readonly Point2[]; readonly aisle: readonly Point2[] }[] = [];
  const kerbs = ring
    .map((from, i) => ({ from, to: ring[(i + 1) % ring.length]! }))
    .sort((a, b) => apart(b.from, b.to) - apart(a.from, a.to));
  return kerbs.flatMap(({ from, to }) => {
    const length = apart(from, to);
    const count = Math.floor(length / width + 1e-6);
    if (count < LEAST_STALLS) return [];
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const start = (length - count * width) / 2;
    /** A place by how far it is along the kerb and into the lot, which lies to the left. */
    const at = (along: number, into: number): Point2 => [
      from[0] + along * ux - into * uy,
      from[1] + along * uy + into * ux,
    ];
    const strip = (i: number, near: number, far: number): readonly Point2[] => {
      const [a, b] = [start + i * width, start + (i + 1) * width];
      return [at(a, near), at(b, near), at(b, far), at(a, far)];
    };
    const fits = (i: number): boolean => {
      const stall = strip(i, 0, depth);
      const before = strip(i, depth, depth + aisle);
      const [a, b] = [start + i * width + TOUCH, start + (i + 1) * width - TOUCH];
      const within = [at(a, TOUCH), at(b, TOUCH), at(b, depth + aisle - TOUCH), at(a, depth + aisle - TOUCH)];
      return (
        within.every((corner, k) => isWhole(lot, corner, within[(k + 1) % 4]!)) &&
        others.every((other) => within.every((corner, k) => isClear(other, corner, within[(k + 1) % 4]!))) &&
        taken.every(
          (one) =>
            overlapDepth(one.stall, stall) < TOUCH &&
            overlapDepth(one.stall, before) < TOUCH &&
            overlapDepth(one.aisle, stall) < TOUCH,
        )
      );
    };
    const runs = runsOf(count, fits);
    for (const [first, last] of runs)
      for (let i = first; i < last; i++)
        taken.push({ stall: strip(i, 0, depth), aisle: strip(i, depth, depth + aisle) });
    const heading = ((Math.atan2(-ux, uy) * 180) / Math.PI + 360) % 360;
    return runs.map(([first, last]) => ({
      from: at(start + first * width, 0),
      to: at(start + last * width, 0),
      stalls: Array.from({ length: last - first }, (_, k) => ({
        at: at(start + (first + k + 0.5) * width, depth),
        width,
        depth,
        heading,
      })),
    }));
  });
}

/** From which to before which place all fit, where those are enough for a row. */
function runsOf(count: number, fits: (i: number) => boolean): readonly (readonly [first: number, last: number])[] {
  const runs: [number, number][] = [];
  let first = 0;
  for (let i = 0; i <= count; i++) {
    if (i < count && fits(i)) continue;
    if (i - first >= LEAST_STALLS) runs.push([first, i]);
    first = i + 1;
  }
  return runs;
}

/** Whether a straight way lies wholly in an outline. */
function isWhole(outline: Obstacle, a: Point2, b: Point2): boolean {
  const inside = spansInside(outline, a[0], a[1], b[0], b[1]).reduce((sum, [from, to]) => sum + to - from, 0);
  return inside > 1 - 1e-6;
}

const isClear = (outline: Obstacle, a: Point2, b: Point2): boolean =>
  !insideOf(outline, a[0], a[1]) && spansInside(outline, a[0], a[1], b[0], b[1]).length === 0;

/** Without corners at which the kerb only bends. */
const straightened = (ring: readonly Point2[]): readonly Point2[] =>
  ring.filter((at, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    const after = ring[(i + 1) % ring.length]!;
    const turn = Math.atan2(after[1] - at[1], after[0] - at[0]) - Math.atan2(at[1] - before[1], at[0] - before[0]);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > (BEND * Math.PI) / 180;
  });
