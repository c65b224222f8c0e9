import { type Box, widened } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { boardKind, MARKED_LISTS } from '../kinds/kinds.ts';
import { refOf } from '../scene/mark.ts';
import { marksOf, type Scene } from '../scene/scene.ts';
import { aimsOf, type TargetLine, type TargetPoint, type Targets } from './aims.ts';

/** Of a crowd, as when a large lot is seen from far, no more than this many marks are looked at. */
const MOST = 300;

/** What of a scene in a box the hand can be drawn to; nothing of the elements that it moves, nor of kinds unseen. */
export function targetsIn(scene: Scene, box: Box, moving: readonly Ref[], unseen: ReadonlySet<string>): Targets {
  const held = new Set(moving.map(({ id }) => id));
  const points: TargetPoint[] = [];
  const lines: TargetLine[] = [];
  let left = MOST;
  for (const list of MARKED_LISTS) {
    const { aims } = boardKind(list);
    if (!aims || unseen.has(list)) continue;
    const index = marksOf(scene, list);
    for (const i of positionsIn(index, box)) {
      const mark = index.items[i]!;
      const ref = refOf(mark);
      if (!ref || held.has(ref.id)) continue;
      if (left-- <= 0) return { points, lines };
      aims(mark as never, aimsOf(ref, points, lines));
    }
  }
  return { points, lines };
}

/** The same about a point, within a distance of it. */
export const targetsAt = (
  scene: Scene,
  at: Point2,
  within: number,
  moving: readonly Ref[],
  unseen: ReadonlySet<string>,
): Targets => targetsIn(scene, widened({ minX: at[0], minY: at[1], maxX: at[0], maxY: at[1] }, within), moving, unseen);
