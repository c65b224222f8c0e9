import type { Run } from '../../routing/network/run.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { RuleWord } from '../../routing/site/rules/rule-words.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { Circuit, Conduit, Handhole, PlannedBox } from './branches.ts';
import type { PlannedDay } from './day.ts';
import type { Hung } from './hung.ts';
import type { LoadCalculation } from './loads.ts';
import type { ChargerFault, Device, Supply } from './supply.ts';
import type { TakeoffRow } from './takeoff.ts';

/** A plan as it is published: plain JSON, lengths and coordinates in the units of its site file, at full precision. */
export interface PlanFile {
  readonly format: 'overrow/plan';
  readonly version: 1;
  /** Name of the site. */
  readonly site: string;
  readonly units: Units;
  /** Edition of the code whose tables were used. */
  readonly code: string;
  readonly runs: readonly Run[];
  readonly reach: readonly Reach[];
  readonly circuits: readonly Circuit[];
  readonly conduits: readonly Conduit[];
  readonly boxes: readonly PlannedBox[];
  /** What those in the ground are, and what they have to bear. */
  readonly handholes: readonly Handhole[];
  readonly supply: Supply;
  /** Every overcurrent device, each after what feeds the equipment that it stands in; branch devices last. */
  readonly devices: readonly Device[];
  /** One for each source, or other equipment that nothing feeds. */
  readonly loadCalculations: readonly LoadCalculation[];
  /** At the boxes of the chargers that have a branch, by what feeds them. */
  readonly faults: readonly ChargerFault[];
  readonly takeoff: readonly TakeoffRow[];
  /** Everything overhead, handed to the member that holds it. */
  readonly hung: readonly Hung[];
  /** What hangs overhead and no member holds, pounds. */
  readonly loose: readonly { readonly of: string; readonly pounds: number }[];
  /** Each day of charging under the rules of load management. */
  readonly days: readonly PlannedDay[];
  readonly findings: readonly Finding[];
  /** Every check that the planner makes, with how many things it was applied to and what came of it. */
  readonly checks: readonly Check[];
  /** What, beside a failure, keeps it from being called sound; empty where nothing does. */
  readonly withheld: readonly string[];
  /** What of the job nobody looked at. */
  readonly notChecked: readonly string[];
  /** What was built beside what is drawn; absent where no place was measured. */
  readonly asBuilt?: AsBuiltFile;
}

/** A figure as drawn and as built: what is left of a limit, or a length; null where there is none. */
export interface AsBuiltPair {
  readonly drawn: number | null;
  readonly built: number | null;
}

/** What the measured places do to cords, branches and voltages, and what there is to say only as built. */
export interface AsBuiltFile {
  readonly drops: readonly {
    readonly drop: string;
    /** As built; a retractor that was not measured hangs from its box as drawn. */
    readonly box: Point3;
    readonly retractor?: Point3;
    /** From the drawing, of box and retractor the greater. */
    readonly away: number;
    readonly chargers: readonly {
      readonly charger: string;
      readonly cord: AsBuiltPair;
      readonly branch: AsBuiltPair;
      /** Percent. */
      readonly volts: AsBuiltPair;
      /** Length of its run; null where the box was built past the longest tap. */
      readonly run: AsBuiltPair;
    }[];
    readonly findings: readonly Finding[];
  }[];
  readonly findings: readonly Finding[];
}

/** One check of the planner: what it is, how many things it was applied to, and what came of it. */
export interface Check {
  readonly rule: RuleWord;
  readonly title: string;
  readonly source: string;
  /** Things it was applied to; 0 where nothing of that kind is drawn. */
  readonly lookedAt: number;
  /** Findings of it, by their weight. */
  readonly fail: number;
  readonly warn: number;
  readonly note: number;
}
