import type { LineColor, RunMark } from '../../scene/mark.ts';

/** A stretch of raceway that runs go along from one point, as far as the farthest of each lane goes. Feet. */
export interface LaneLeg {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  /** Direction in which the runs come to it; null where they begin. */
  readonly before: readonly [number, number] | null;
  readonly lanes: Lane[];
}

interface Lane {
  readonly color: LineColor;
  readonly lane: -1 | 0 | 1;
  length: number;
  /** Direction in which the farthest run goes on; null where it ends. */
  after: readonly [number, number] | null;
}

const ON_RACEWAY_NONE = '';

/**
 * The legs of some runs with every stretch that they share told once: runs from one panel enter a raceway at one point
 * and leave it at many, so that of each lane only the longest is drawn. Without this a trunk is stroked once a run.
 */
export function laneLegs(marks: readonly RunMark[]): LaneLeg[] {
  const byRaceway = new Map<string, LaneLeg[]>();
  const all: LaneLeg[] = [];
  for (const { run, path, lanes } of marks) {
    if (lanes.length === 0) continue;
    let before: readonly [number, number] | null = null;
    let last: { readonly leg: LaneLeg; readonly length: number } | null = null;
    for (let i = 1; i < path.length; i++) {
      const [x, y] = path[i - 1]!;
      const dx = path[i]![0] - x;
      const dy = path[i]![1] - y;
      const length = Math.hypot(dx, dy);
      if (length < 1e-6) continue;
      const way = [dx / length, dy / length] as const;
      if (last) turnTo(last.leg, last.length, lanes, way);
      const raceway = run.legs[i - 1] ?? ON_RACEWAY_NONE;
      const legs = byRaceway.get(raceway) ?? [];
      byRaceway.set(raceway, legs);
      let leg = raceway === ON_RACEWAY_NONE ? undefined : legs.find((each) => isSame(each, x, y, way));
      if (!leg) {
        leg = { x, y, ux: way[0], uy: way[1], before, lanes: [] };
        if (raceway !== ON_RACEWAY_NONE) legs.push(leg);
        all.push(leg);
      }
      reach(leg, length, lanes);
      last = { leg, length };
      before = way;
    }
  }
  return all;
}

const isSame = (leg: LaneLeg, x: number, y: number, [ux, uy]: readonly [number, number]): boolean =>
  Math.abs(leg.x - x) < 1e-6 && Math.abs(leg.y - y) < 1e-6 && leg.ux * ux + leg.uy * uy > 0.99999;

function reach(leg: LaneLeg, length: number, lanes: RunMark['lanes']): void {
  for (const { color, lane } of lanes) {
    const own = leg.lanes.find((each) => each.lane === lane && each.color === color);
    if (!own) leg.lanes.push({ color, lane, length, after: null });
    else if (own.length < length) {
      own.length = length;
      own.after = null;
    }
  }
}

function turnTo(leg: LaneLeg, length: number, lanes: RunMark['lanes'], way: readonly [number, number]): void {
  for (const own of leg.lanes)
    if (own.length === length && lanes.some(({ lane, color }) => lane === own.lane && color === own.color))
      own.after = way;
}
