import { kept } from '../../../routing/kept/kept.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { Conduit } from '../../plan-file/branches.ts';

/** Conduits of one size that lie together. */
export interface AlikeConduits {
  readonly method: Method;
  /** Null for a tray. */
  readonly tradeSize: string | null;
  readonly count: number;
  /** In the order in which they were met. */
  readonly ids: readonly string[];
}

/** A straight piece of the plan along which the same conduits lie. Feet. */
export interface ConduitStretch {
  readonly from: Point2;
  readonly to: Point2;
  /** Most first, then in the order in which they were met. */
  readonly conduits: readonly AlikeConduits[];
}

/** Legs whose lines are within a hundredth of a foot, and a thousandth of their direction, lie along one line. */
const LINE_TIE = 100;
const DIRECTION_TIE = 1000;
/** Pieces that are shorter in plan are risers, or slips of drawing. Feet. */
const LEAST = 0.05;

interface Leg {
  readonly from: number;
  readonly to: number;
  readonly conduit: Conduit;
}

interface Line {
  readonly along: Point2;
  /** Distance of the line from the origin, to its left. */
  readonly off: number;
  readonly legs: Leg[];
}

/**
 * What lies along each straight piece of the plan: the pieces part where a conduit begins, ends or changes its size, as
 * notes on a drawing do; by conduit also where one begins or ends beside another of its size. Conduits at several elevations
 * over one another are one piece. Kept with the conduits: every sheet of a set asks for those of the whole site.
 */
export const conduitStretches = (
  conduits: readonly Conduit[],
  by: 'size' | 'conduit' = 'size',
): readonly ConduitStretch[] => keptStretches(conduits, by);

const keptStretches = kept((conduits: readonly Conduit[], by: 'size' | 'conduit'): readonly ConduitStretch[] => {
  const lines = new Map<string, Line>();
  for (const conduit of conduits)
    for (let i = 1; i < conduit.path.length; i++) addLeg(lines, conduit, conduit.path[i - 1]!, conduit.path[i]!);
  return [...lines.values()].flatMap((line) => stretchesOf(line, by));
});

function addLeg(lines: Map<string, Line>, conduit: Conduit, [ax, ay]: Point3, [bx, by]: Point3): void {
  const length = Math.hypot(bx - ax, by - ay);
  if (length < LEAST) return;
  // Each line has one direction, to the right or straight up, whichever way a conduit runs along it.
  const sense = bx - ax > 1e-9 * length || (Math.abs(bx - ax) <= 1e-9 * length && by > ay) ? 1 : -1;
  const along: Point2 = [(sense * (bx - ax)) / length, (sense * (by - ay)) / length];
  const off = ay * along[0] - ax * along[1];
  const key = [along[0] * DIRECTION_TIE, along[1] * DIRECTION_TIE, off * LINE_TIE]
    .map((v) => Math.round(v) + 0)
    .join(' ');
  const line = lines.get(key) ?? { along, off, legs: [] };
  lines.set(key, line);
  const [from, to] = [ax, bx].map((x, i) => x * line.along[0] + [ay, by][i]! * line.along[1]) as [number, number];
  line.legs.push({ from: Math.min(from, to), to: Math.max(from, to), conduit });
}

function stretchesOf({ along, off, legs }: Line, by: 'size' | 'conduit'): ConduitStretch[] {
  const ends = [...new Set(legs.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const stretches: { from: number; to: number; key: string; conduits: readonly AlikeConduits[] }[] = [];
  const byStart = [...legs].sort((a, b) => a.from - b.from);
  let next = 0;
  let open: Leg[] = [];
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1]!, ends[i]!];
    const middle = (from + to) / 2;
    while (next < byStart.length && byStart[next]!.from <= middle) open.push(byStart[next++]!);
    open = open.filter((leg) => leg.to > middle);
    if (open.length === 0 || to - from < LEAST) continue;
    const conduits = alike(open);
    const key = JSON.stringify(by === 'conduit' ? conduits : conduits.map(({ ids, ...size }) => size));
    const last = stretches.at(-1);
    if (last !== undefined && last.key === key && from - last.to < LEAST) last.to = to;
    else stretches.push({ from, to, key, conduits });
  }
  const place = (t: number): Point2 => [t * along[0] - off * along[1], t * along[1] + off * along[0]];
  return stretches.map(({ from, to, conduits }) => ({ from: place(from), to: place(to), conduits }));
}

function alike(legs: readonly Leg[]): readonly AlikeConduits[] {
  const sizes = new Map<string, AlikeConduits>();
  for (const { conduit } of legs) {
    const { method, tradeSize } = conduit;
    const key = `${method} ${tradeSize}`;
    const ids = [...(sizes.get(key)?.ids ?? []), conduit.id];
    sizes.set(key, { method, tradeSize, count: ids.length, ids });
  }
  return [...sizes.values()].sort((a, b) => b.count - a.count);
}
