import type { Run } from '../../routing/network/run.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Finding } from '../../routing/site/finding.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { Box, Check, Circuit, Conduit, Handhole, PhasePair, Supply, TakeoffRow } from '../plan-file.ts';
import type { BoxSupply } from '../supply/load-flow/boxes.ts';

/** The plan as the engine holds it: lengths in feet. `writePlan` gives it the shape and units of the published file. */
export interface Plan {
  readonly site: string;
  readonly runs: readonly Run[];
  readonly reach: readonly Reach[];
  /** What the circuits and conduits are put together from, by the equipment that feeds them; not in the published file. */
  readonly branches: readonly EquipmentBranches[];
  /** Lines that each charger hangs on, likewise. */
  readonly phases: readonly (readonly PhasePair[])[];
  /** What the volts at their boxes are worked from, likewise. */
  readonly boxSupply: BoxSupply;
  readonly circuits: readonly Circuit[];
  readonly conduits: readonly Conduit[];
  readonly boxes: readonly Box[];
  /** Of the boxes in the ground: what each is, and what it has to bear. */
  readonly handholes: readonly Handhole[];
  readonly supply: Supply;
  readonly takeoff: readonly TakeoffRow[];
  readonly findings: readonly Finding[];
  /** Every check of the closed list, with how much it was applied to. */
  readonly checks: readonly Check[];
  /** What, beside a failure, keeps it from being called sound, in words; empty where nothing does. */
  readonly withheld: readonly string[];
  /** What of the job nobody looked at. */
  readonly notChecked: readonly string[];
}
