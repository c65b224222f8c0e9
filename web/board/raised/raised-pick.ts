import { heightsOf } from '../../../calc/space/tallest.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { boardKind } from '../kinds/kinds.ts';
import type { SceneMark } from '../scene/mark.ts';
import { refOf } from '../scene/mark.ts';
import { toSegment } from '../scene/near.ts';
import type { Passing } from '../scene/pick.ts';
import { marksOf, type Scene } from '../scene/scene.ts';
import { raisedMark } from './raised-marks.ts';

/** What is drawn over the plan, the smallest first, as the hand takes it there. */
const OVER = ['drops', 'pullpoints', 'raceways', 'members'] as const;

/** The element that is drawn at a place of the raised drawing, within `near` feet; null where only the plan lies there. */
export function pickRaised(scene: Scene, at: Point2, near: number, passing: Passing): Ref | null {
  const { low, high } = heightsOf(scene.site);
  const box = { minX: at[0] - near, minY: at[1] - near - high, maxX: at[0] + near, maxY: at[1] + near - low };
  for (const list of OVER) {
    if (passing.has(list)) continue;
    const index = marksOf(scene, list);
    const reach = near * (boardKind(list).hold?.reach ?? 1);
    let best: SceneMark | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const i of positionsIn(index, box)) {
      const off = distanceTo(index.items[i]!, at);
      if (off < least && off <= reach) {
        best = index.items[i]!;
        least = off;
      }
    }
    if (best) return refOf(best);
  }
  return null;
}

/** How far what is drawn of a mark is from a place of the drawing, feet. What lies on the ground is the plan's. */
function distanceTo(mark: SceneMark, at: Point2): number {
  switch (mark.list) {
    case 'drops': {
      const { box, retractor } = raisedMark('drops', mark).drop;
      return Math.min(...[box, retractor ?? box].map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
    }
    case 'pullpoints': {
      const [x, y] = raisedMark('pullpoints', mark).pullpoint.at;
      return Math.hypot(x - at[0], y - at[1]);
    }
    case 'raceways':
      return along(raisedMark('raceways', mark).raceway.path, at);
    case 'members': {
      const { from, to } = raisedMark('members', mark).member;
      return along([from, to], at);
    }
    default:
      return Number.POSITIVE_INFINITY;
  }
}

function along(path: readonly Point3[], at: Point2): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1]!;
    const [bx, by] = path[i]!;
    least = Math.min(least, toSegment(at, [ax, ay], [bx, by]));
  }
  return least;
}
