import type { Run } from '../../routing/network/run.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import type { SupplyTree } from '../supply/tree/supply-tree.ts';
import type { CodeTables } from '../tables/code-tables.ts';

/** What the checks look at: a site, and what of its plan they are told by. */
export interface Looked {
  readonly site: Site;
  readonly runs: readonly Run[];
  readonly reach: readonly Reach[];
  readonly branches: readonly EquipmentBranches[];
  readonly tree: SupplyTree;
  /** New and existing, as far as the supply has them. */
  readonly feeders: readonly FeederConduit[];
  readonly tables: CodeTables;
}

/** What is told of a check wherever it is named: over several findings, in the list of what was looked at. */
export interface Rule {
  /** What stands over several findings of it. */
  readonly title: string;
  /** What it goes by, fit for a drawing: a code section, a standard, or "common practice". */
  readonly source: string | ((tables: CodeTables) => string);
  /**
   * How many things it was applied to; 0 where nothing of that kind is drawn. Asked at every step of a drag: lengths of
   * lists, and counts that are kept (`counts.ts`), not a way through all items.
   */
  readonly lookedAt: (at: Looked) => number;
  /** What it applies to and could not be looked at, as words for the list of what was not; null where there is none. */
  readonly missed?: (at: Looked) => string | null;
  /** Any finding of it, whatever its weight, keeps the plan from being called sound, for this reason. */
  readonly withholds?: string;
}
