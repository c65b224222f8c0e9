import { kept } from '../kept/kept.ts';
import { type Box, boxOf } from '../plane/box.ts';
import { indexing, positionsIn } from '../plane/box-index.ts';
import { type Obstacle, obstacleOf } from '../plane/obstacle.ts';
import { stallRectangle } from '../site/place/stall-rectangle.ts';
import type { Aisle, Keepout, Stall } from '../site/site.ts';

/** The outline of an aisle or a keep-out, made ready once for each object. */
export const outlineOf = kept((element: Aisle | Keepout): Obstacle => obstacleOf(element.outline));

/** The painted outline of a stall. */
export const stallOutline = kept((stall: Stall): Obstacle => obstacleOf(stallRectangle(stall)));

/** The stalls of a site by the boxes of their painted outlines. */
export const stallIndex = indexing<Stall>((stall) => boxOf(stallRectangle(stall)));

/** The stalls whose painted outline shares a point with a box. */
export const stallsIn = (stalls: readonly Stall[], box: Box): Stall[] =>
  positionsIn(stallIndex(stalls), box).map((i) => stalls[i]!);
