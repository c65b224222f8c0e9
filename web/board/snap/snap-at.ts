import type { Point2 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import type { Scene } from '../scene/scene.ts';
import type { ViewState } from '../view-store.ts';
import type { Snapped } from './snap-to.ts';
import { snapped } from './snapped.ts';
import { stepOf } from './step.ts';
import { targetsAt } from './targets.ts';

/** How far about the hand elements are lined up with, feet. */
const AROUND = 45;

export interface Pointing {
  readonly at: Point2;
  /** Feet. */
  readonly near: number;
  /** Elements that the hand moves, which draw nothing to themselves. */
  readonly moving?: readonly Ref[];
  readonly from?: Point2 | null;
  readonly before?: Point2 | null;
  /** Stalls and columns are not drawn to the raceways and beams above them. */
  readonly grounded?: boolean;
}

/** Where a pointed place of a scene comes to lie, by what the person has left switched on. */
export function snapAt(
  scene: Scene,
  view: ViewState,
  { at, near, moving = [], from = null, before = null, grounded = false }: Pointing,
): Snapped {
  const { snapsOff, hiddenKinds } = view;
  return snapped(at, {
    near,
    step: stepOf(scene.units),
    gridlines: scene.site.gridlines,
    close: targetsAt(scene, at, near, moving, hiddenKinds),
    around: snapsOff.has('alignment') ? { points: [], lines: [] } : targetsAt(scene, at, AROUND, moving, hiddenKinds),
    from,
    before,
    off: grounded ? new Set([...snapsOff, 'members' as const]) : snapsOff,
  });
}
