import { offGrid, onGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { crossings, elevation, perpendicularFoot } from './crossings.ts';
import { isAslant, onRails } from './rails.ts';
import { on, type Snapped, type SnapTo } from './snap-to.ts';
import { toStep } from './step.ts';

/**
 * Where a pointed place comes to lie: on a place that is near (an end, a middle, a crossing, the foot of a
 * perpendicular), else on one line or where two meet (gridlines, raceways and members, right angles, places lined up
 * with), else on the step.
 */
export function snapped(at: Point2, to: SnapTo): Snapped {
  return onPoint(at, to) ?? onRails(at, to) ?? onStep(at, to);
}

function onPoint(at: Point2, to: SnapTo): Snapped | null {
  let best: Snapped | null = null;
  let least = to.near;
  const offer = (place: Point2, z: number | null, label: string, handicap: number, ref: Ref | null): void => {
    const away = Math.hypot(place[0] - at[0], place[1] - at[1]) + handicap * to.near;
    if (away > least || Math.hypot(place[0] - at[0], place[1] - at[1]) > to.near) return;
    least = away;
    best = { at: place, z, ref, guides: [{ kind: 'point', at: place, label }] };
  };
  for (const { kind, at: place, z, label, ref } of to.close.points)
    if (on(to, kind)) offer(place, z, label, kind === 'ends' ? 0 : 0.35, ref);
  if (on(to, 'crossings')) for (const { place, z, label, ref } of crossings(to)) offer(place, z, label, 0.1, ref);
  if (on(to, 'perpendiculars') && to.from)
    for (const line of to.close.lines) {
      const foot = perpendicularFoot(to.from, line);
      if (foot) offer(foot, elevation(line, foot), `square to ${line.label}`, 0.35, line.ref);
    }
  return best;
}

function onStep(at: Point2, to: SnapTo): Snapped {
  const stepped = ([x, y]: Point2): Point2 => [toStep(x, to.step), toStep(y, to.step)];
  // Where gridlines stand aslant the steps count along them: setting out is from them.
  const place = isAslant(to.gridlines) ? offGrid(to.gridlines, stepped(onGrid(to.gridlines, at))) : stepped(at);
  return { at: on(to, 'grid') ? place : at, z: null, ref: null, guides: [] };
}
