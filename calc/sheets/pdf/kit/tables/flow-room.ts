import type { Area } from '../area.ts';

/** How sheets differ on which tables flow. */
export interface FlowRoom {
  /** The room on the first sheets, as high as the others, and how many of them have no more. */
  readonly first: Area;
  readonly count: number;
  /** No table that begins there is wider than this. */
  readonly most: number;
  /** Room under a table before the next, points; as usual where it is not given. */
  readonly under?: number;
}
