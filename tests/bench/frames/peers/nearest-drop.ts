import type { Point2 } from '../../../../routing/site/site.ts';
import type { DropMark } from '../../../../web/board/kinds/drops.ts';
import type { Scene } from '../../../../web/board/scene/scene.ts';

/** The drop nearest to a place, or null where none is within `most` feet. */
export function nearestDrop(scene: Scene, [x, y]: Point2, most: number): DropMark | null {
  let best: DropMark | null = null;
  let least = most;
  for (const mark of scene.drops.items) {
    const [hangX, hangY] = mark.drop.retractor ?? mark.drop.box;
    const far = Math.hypot(hangX - x, hangY - y);
    if (far > least) continue;
    least = far;
    best = mark;
  }
  return best;
}
