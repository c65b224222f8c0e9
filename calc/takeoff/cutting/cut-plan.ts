import { kept } from '../../../routing/kept/kept.ts';
import type { PlanFile } from '../../plan-file/plan-file.ts';
import { cuttingOf } from '../rows.ts';
import type { CutGroup } from './stock.ts';

/**
 * What comes from which stick and which reel, and what is ordered to length: of branches and feeders alike, and the same
 * cutting that the sticks, reels and bought feet of the takeoff are counted from.
 */
export const cutPlan = kept(({ takeoff }: Pick<PlanFile, 'takeoff'>): readonly CutGroup[] => [
  ...new Set(takeoff.flatMap((row) => cuttingOf(row) ?? [])),
]);
