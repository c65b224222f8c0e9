import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { nearestOnSegment } from '../scene/near.ts';
import type { TargetLine } from './aims.ts';
import type { SnapTo } from './snap-to.ts';

interface Crossing {
  readonly place: Point2;
  readonly z: number | null;
  readonly label: string;
  readonly ref: Ref | null;
}

export function crossings(to: SnapTo): Crossing[] {
  const { lines } = to.close;
  const found: Crossing[] = [];
  for (let i = 0; i < lines.length; i++)
    for (let j = 0; j < i; j++) {
      const a = lines[i]!;
      const b = lines[j]!;
      const place = meeting([a.from[0], a.from[1]], ways(a), [b.from[0], b.from[1]], ways(b));
      if (!place || !isWithinLine(a, place) || !isWithinLine(b, place)) continue;
      const [za, zb] = [elevation(a, place), elevation(b, place)];
      // Of a raceway under a beam it is the raceway that one joins; of two beams one hangs under the lower.
      const upper = za > zb ? a : b;
      const lower = upper === a ? b : a;
      const own = [lower, upper].find(({ ref }) => ref.list === 'raceways') ?? lower;
      found.push({ place, z: own === a ? za : zb, ref: own.ref, label: `${a.label} and ${b.label} cross` });
    }
  for (const x of to.gridlines.x)
    for (const y of to.gridlines.y)
      found.push({
        place: offGrid(to.gridlines, [x.at, y.at]),
        z: null,
        ref: null,
        label: `${x.label} and ${y.label}`,
      });
  return found;
}

export const ways = ({ from, to }: TargetLine): Point2 => [to[0] - from[0], to[1] - from[1]];

export const isWithinLine = ({ from, to }: TargetLine, [x, y]: Point2): boolean =>
  Math.min(from[0], to[0]) - 1e-6 <= x &&
  x <= Math.max(from[0], to[0]) + 1e-6 &&
  Math.min(from[1], to[1]) - 1e-6 <= y &&
  y <= Math.max(from[1], to[1]) + 1e-6;

export function elevation({ from, to }: TargetLine, [x, y]: Point2): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return from[2] + (to[2] - from[2]) * (length > 0 ? Math.hypot(x - from[0], y - from[1]) / length : 0);
}

export function perpendicularFoot(from: Point2, line: TargetLine): Point2 | null {
  const foot = nearestOnSegment(from, [line.from[0], line.from[1]], [line.to[0], line.to[1]]);
  const [ux, uy] = ways(line);
  // At an end of the line the nearest point is no foot of a perpendicular.
  return Math.abs((foot[0] - from[0]) * ux + (foot[1] - from[1]) * uy) < 1e-6 ? foot : null;
}

/** Where two lines meet; null where they hardly do. */
export function meeting(p: Point2, u: Point2, q: Point2, v: Point2): Point2 | null {
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 0.02 * Math.hypot(...u) * Math.hypot(...v)) return null;
  const s = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / cross;
  return [p[0] + s * u[0], p[1] + s * u[1]];
}
