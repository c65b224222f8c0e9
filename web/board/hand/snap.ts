import type { Point2, Site } from '../../../routing/site/site.ts';
import { METRES_PER_FOOT } from '../../../routing/site/units.ts';
import type { Units } from '../../../routing/site/vocabulary.ts';
import { nearestOnSegment } from '../scene/near.ts';

/** Where a snapped place comes from, to be shown. */
export type Guide =
  | { readonly kind: 'x' | 'y'; readonly at: number; readonly label: string }
  | { readonly kind: 'raceway'; readonly from: Point2; readonly to: Point2; readonly label: string };

export interface Segment {
  readonly from: Point2;
  readonly to: Point2;
  readonly label: string;
}

export interface SnapTo {
  /** How far off, feet, something draws the hand to it. */
  readonly near: number;
  readonly step: number;
  readonly gridlines: Site['gridlines'];
  readonly segments: readonly Segment[];
}

export interface Snapped {
  readonly at: Point2;
  readonly guides: readonly Guide[];
}

/** The step of moves: 3 in., or a decimetre on a metric site. Feet. */
export const stepOf = (units: Units): number => (units === 'm' ? 0.1 / METRES_PER_FOOT : 0.25);

/** The large step of the arrow keys: a foot, or half a metre. Feet. */
export const longStepOf = (units: Units): number => (units === 'm' ? 0.5 / METRES_PER_FOOT : 1);

const toStep = (value: number, step: number): number => Math.round(value / step) * step;

/**
 * Where a moved point comes to lie: on a gridline or a raceway that is near, else on the step. A gridline holds one
 * coordinate and a raceway the point to its line, so that both can hold it at once.
 */
export function snapped([x, y]: Point2, { near, step, gridlines, segments }: SnapTo): Snapped {
  const guides: Guide[] = [];
  const gridX = nearestLine(gridlines.x, x, near);
  const gridY = nearestLine(gridlines.y, y, near);
  let atX = gridX?.at ?? toStep(x, step);
  let atY = gridY?.at ?? toStep(y, step);
  const segment = nearestSegment(segments, [x, y], near);
  if (segment) {
    guides.push({ kind: 'raceway', ...segment });
    const [fx, fy] = segment.from;
    const [tx, ty] = segment.to;
    // Along a raceway that is square to the axes the step still counts; on a slanting one the foot of the point does.
    if (Math.abs(fy - ty) < 1e-6) {
      atY = fy;
      atX = between(atX, fx, tx);
    } else if (Math.abs(fx - tx) < 1e-6) {
      atX = fx;
      atY = between(atY, fy, ty);
    } else [atX, atY] = nearestOnSegment([atX, atY], segment.from, segment.to);
  }
  if (gridX && Math.abs(atX - gridX.at) < 1e-9) guides.push({ kind: 'x', at: gridX.at, label: gridX.label });
  if (gridY && Math.abs(atY - gridY.at) < 1e-9) guides.push({ kind: 'y', at: gridY.at, label: gridY.label });
  return { at: [atX, atY], guides };
}

const between = (value: number, a: number, b: number): number =>
  Math.min(Math.max(a, b), Math.max(Math.min(a, b), value));

function nearestLine(lines: Site['gridlines']['x'], value: number, near: number): Site['gridlines']['x'][number] | null {
  let best = null;
  let least = near;
  for (const line of lines) {
    const off = Math.abs(line.at - value);
    if (off <= least) {
      best = line;
      least = off;
    }
  }
  return best;
}

function nearestSegment(segments: readonly Segment[], at: Point2, near: number): Segment | null {
  let best = null;
  let least = near;
  for (const segment of segments) {
    const [x, y] = nearestOnSegment(at, segment.from, segment.to);
    const off = Math.hypot(x - at[0], y - at[1]);
    if (off <= least) {
      best = segment;
      least = off;
    }
  }
  return best;
}
