import { kept } from '../../routing/kept/kept.ts';
import type { Rules } from '../../routing/site/site.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { tablesOf } from '../tables/editions.ts';
import { INVENTED_COST, type InstalledCost } from './home-runs/installed-cost.ts';

/** What conduits and their circuits are designed by. */
export interface Design {
  readonly tables: CodeTables;
  readonly rules: Rules;
  readonly cost: InstalledCost;
}

/** The design rules of a site: by the tables of its code, or where they are not held by the newest that are. */
export const designOf = kept((rules: Rules): Design => {
  return { rules, tables: tablesOf(rules), cost: INVENTED_COST };
});
