import type { Rules } from '../../routing/site/site.ts';
import { remembered } from '../memo.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { NEC_2023, tablesFor } from '../tables/nec-2023.ts';
import { INVENTED_COST, type InstalledCost } from './installed-cost.ts';

/** What conduits and their circuits are designed by. */
export interface Design {
  readonly tables: CodeTables;
  readonly rules: Rules;
  readonly cost: InstalledCost;
}

/** The design rules of a site: by the tables of its code, or where they are not held by the newest that are. */
export const designOf = remembered((rules: Rules): Design => {
  return { rules, tables: tablesFor(rules.code) ?? NEC_2023, cost: INVENTED_COST };
});
