import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import type { Targets } from './aims.ts';
import type { Guide } from './guide.ts';
import type { SnapKind } from './kinds.ts';

export interface SnapTo {
  /** How far off, feet, something draws the hand to it. */
  readonly near: number;
  readonly step: number;
  readonly gridlines: Site['gridlines'];
  /** What lies about the hand. */
  readonly close: Targets;
  /** What lies farther off and may be lined up with. */
  readonly around: Targets;
  /** Where the line that is being drawn comes from, and the way it came, for right angles and perpendiculars. */
  readonly from: Point2 | null;
  readonly before: Point2 | null;
  /** What the person has switched off. */
  readonly off: ReadonlySet<SnapKind>;
}

export interface Snapped {
  readonly at: Point2;
  /** Elevation of what it lies on, feet; null where that has none. */
  readonly z: number | null;
  /** The element it lies on. */
  readonly ref: Ref | null;
  readonly guides: readonly Guide[];
}

export const on = (to: SnapTo, kind: SnapKind): boolean => !to.off.has(kind);
