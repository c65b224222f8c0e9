import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Charger, Issued, Load, Rules } from '../../routing/site/site.ts';
import type { Device } from '../plan-file/supply.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import type { FeederLies } from './devices/unprotected-feeder.ts';
import type { NodeFault } from './fault/fault.ts';
import type { SupplyModel } from './load-flow/supply-model.ts';
import type { SupplyState } from './load-flow/supply-solve.ts';
import type { Demand } from './panels/demand.ts';
import type { PanelSchedule } from './panels/panel-schedule.ts';
import type { SupplyLines } from './tree/supply-lines.ts';
import type { SupplyTree } from './tree/supply-tree.ts';

/** Everything that the checks of a supply look at. Lists without a word to them run as the tree's nodes do. */
export interface SupplyFacts {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly lines: SupplyLines;
  readonly state: SupplyState;
  readonly demands: readonly Demand[];
  /** Where the feeder into each node lies. */
  readonly lies: FeederLies;
  /** Of equipment and feeders; the breakers of branches are not among them. */
  readonly devices: readonly Device[];
  readonly faults: readonly (NodeFault | null)[];
  readonly loads: readonly Load[];
  readonly chargers: readonly Charger[];
  readonly rules: Rules;
  readonly units: Units;
  readonly schedules: ReadonlyMap<string, PanelSchedule>;
  readonly issued: Issued;
  readonly tables: CodeTables;
}

/** Amperes for the eye: whole from 100 on, one decimal below. */
export const ampsText = (amps: number): string => `${amps >= 100 ? Math.round(amps) : Number(amps.toFixed(1))} A`;
