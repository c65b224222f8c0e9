import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { PhasePair } from '../plan-file/branches.ts';
import type { PlanFile } from '../plan-file/plan-file.ts';
import type { BoxSupply } from '../supply/load-flow/box-voltages.ts';

/** The plan as the engine holds it: lengths in feet. `writePlan` gives it the shape and units of the published file. */
export interface Plan extends Omit<PlanFile, 'format' | 'version' | 'units' | 'code' | 'asBuilt'> {
  /** What the circuits and conduits are put together from, by the equipment that feeds them; not in the published file. */
  readonly branches: readonly EquipmentBranches[];
  /** Lines that each charger hangs on, likewise. */
  readonly phases: readonly (readonly PhasePair[])[];
  /** What the volts at their boxes are worked from, likewise. */
  readonly boxSupply: BoxSupply;
}

/** A plan without what counts and weighs it: all that the first screen, a drag and most answers about a plan read. */
export type UncountedPlan = Omit<Plan, 'takeoff' | 'hung' | 'loose'>;
