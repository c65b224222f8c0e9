import type { Box } from '../plane/box.ts';
import { type BoxIndex, boxIndex, positionsIn } from '../plane/box-index.ts';
import { type Obstacle, obstacleOf } from '../plane/obstacle.ts';
import { stallRectangle } from '../site/place/stall-rectangle.ts';
import type { Aisle, Keepout, Stall } from '../site/site.ts';

const outlines = new WeakMap<object, Obstacle>();

/** The outline of an aisle or a keep-out, made ready once for each object. */
export function outlineOf(element: Aisle | Keepout): Obstacle {
  const known = outlines.get(element);
  if (known) return known;
  const made = obstacleOf(element.outline);
  outlines.set(element, made);
  return made;
}

/** The painted outline of a stall. */
export function stallOutline(stall: Stall): Obstacle {
  const known = outlines.get(stall);
  if (known) return known;
  const made = obstacleOf(stallRectangle(stall));
  outlines.set(stall, made);
  return made;
}

let latest: BoxIndex<Stall> | undefined;

/** The stalls whose painted outline shares a point with a box. */
export function stallsIn(stalls: readonly Stall[], box: Box): Stall[] {
  if (latest?.items !== stalls) latest = boxIndex(stalls, stallOutline, latest);
  return positionsIn(latest, box).map((i) => stalls[i]!);
}
