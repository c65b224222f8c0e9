import type { Conduit } from '../../calc/plan-file/branches.ts';
import type { Run } from '../../routing/network/run.ts';
import type { Point3, Pullpoint } from '../../routing/site/site.ts';

/** A place on the strip: feet along in plan, feet above grade. */
export interface UnrolledPoint {
  readonly along: number;
  readonly up: number;
}

export interface StripLeg {
  readonly kind: 'tap' | 'riser' | 'level' | 'slope';
  readonly from: UnrolledPoint;
  readonly to: UnrolledPoint;
  readonly length: number;
  readonly raceway: string | null;
}

export interface StripConduit {
  readonly conduit: Conduit;
  readonly from: UnrolledPoint;
  readonly to: UnrolledPoint;
}

/** A run laid out flat: what is straight in plan lies one after the other, what stands upright stands. */
export interface Unrolled {
  readonly points: readonly UnrolledPoint[];
  readonly legs: readonly StripLeg[];
  /** Inner points of the path: the changes of direction. */
  readonly bends: readonly UnrolledPoint[];
  readonly pullpoints: readonly { readonly id: string; readonly at: UnrolledPoint }[];
  readonly conduits: readonly StripConduit[];
  readonly along: number;
  readonly low: number;
  readonly high: number;
}

/** How far off the run, feet, a pull point may lie to be on it. */
const ON_RUN = 0.3;

/** Lays a run out flat, with its conduits end to end along it. Null where there is no run. */
export function unrolled(run: Run, conduits: readonly Conduit[], pullpoints: readonly Pullpoint[]): Unrolled | null {
  const { path, legs: raceways } = run;
  if (path.length < 2) return null;
  const points: UnrolledPoint[] = [{ along: 0, up: path[0]![2] }];
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    points.push({ along: points[i - 1]!.along + Math.hypot(b[0] - a[0], b[1] - a[1]), up: b[2] });
  }
  const legs = points.slice(1).map((to, i): StripLeg => {
    const from = points[i]!;
    const raceway = raceways[i] ?? null;
    return { kind: kindOf(from, to, raceway), from, to, length: spaceBetween(path[i]!, path[i + 1]!), raceway };
  });
  const shown = legs.filter(({ length }) => length > 1e-6);
  return {
    points,
    legs: shown,
    bends: shown.slice(1).map(({ from }) => from),
    pullpoints: pullpoints.flatMap(({ id, at }) => {
      const place = placeOnRun(path, points, at);
      return place ? [{ id, at: place }] : [];
    }),
    conduits: laidEndToEnd(conduits, legs),
    along: points.at(-1)!.along,
    low: Math.min(...points.map(({ up }) => up)),
    high: Math.max(...points.map(({ up }) => up)),
  };
}

function kindOf(from: UnrolledPoint, to: UnrolledPoint, raceway: string | null): StripLeg['kind'] {
  if (raceway === null) return 'tap';
  if (to.along - from.along < 1e-6) return 'riser';
  return Math.abs(to.up - from.up) < 1e-6 ? 'level' : 'slope';
}

const spaceBetween = (a: Point3, b: Point3): number => Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);

function laidEndToEnd(conduits: readonly Conduit[], legs: readonly StripLeg[]): StripConduit[] {
  let done = 0;
  return conduits.map((conduit) => {
    const from = atLength(legs, done);
    done += conduit.length;
    return { conduit, from, to: atLength(legs, done) };
  });
}

/** The place so many feet along the run, measured in space. */
export function atLength(legs: readonly StripLeg[], length: number): UnrolledPoint {
  let left = length;
  for (const { from, to, length: own } of legs) {
    if (left <= own + 1e-6) {
      const t = own === 0 ? 0 : Math.min(1, left / own);
      return { along: from.along + t * (to.along - from.along), up: from.up + t * (to.up - from.up) };
    }
    left -= own;
  }
  return legs.at(-1)?.to ?? { along: 0, up: 0 };
}

function placeOnRun(path: readonly Point3[], points: readonly UnrolledPoint[], at: Point3): UnrolledPoint | null {
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const square = d[0] * d[0] + d[1] * d[1] + d[2] * d[2];
    if (square === 0) continue;
    const dot = (at[0] - a[0]) * d[0] + (at[1] - a[1]) * d[1] + (at[2] - a[2]) * d[2];
    const t = Math.min(1, Math.max(0, dot / square));
    if (spaceBetween(at, [a[0] + t * d[0], a[1] + t * d[1], a[2] + t * d[2]]) > ON_RUN) continue;
    const [from, to] = [points[i - 1]!, points[i]!];
    return { along: from.along + t * (to.along - from.along), up: from.up + t * (to.up - from.up) };
  }
  return null;
}

/** The point of the plan that lies so many feet along a run. */
export function planPointAt(path: readonly Point3[], along: number): readonly [number, number] {
  let left = along;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1]!, path[i]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= length && length > 0) {
      const t = left / length;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    }
    left -= length;
  }
  const last = path.at(-1)!;
  return [last[0], last[1]];
}
