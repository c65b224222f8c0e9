import { GRADES } from '../../../../routing/site/rules/finding.ts';
import { sourceOf } from '../../../checks/checks.ts';
import { findingsGrouped, likewise } from '../../../checks/findings-grouped.ts';
import { RULES } from '../../../checks/rules.ts';
import { standingWords } from '../../../checks/standing.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import type { Table } from '../kit/tables/table.ts';

/** Places of one matter that are listed by id. */
const MOST_PLACES = 14;

/** What the plan has to say of the site, in its order: one row a matter, with one sentence of it and all its places. */
export function findingsSummary(plan: Plan, tables: CodeTables, width: number): Table {
  return {
    short: 'findings',
    title: 'Findings',
    width,
    lead: [`${standingWords(plan)}.`.replace(/\.\.$/, '.')],
    columns: [{ head: 'Grade' }, { head: 'No.', align: 'right' }, { head: 'What, where, and by which rule' }],
    rows: findingsGrouped(plan.findings).map(({ first, count, others }) => {
      const more = likewise(others, MOST_PLACES);
      const { rule } = first;
      const by = rule === 'sound' ? '' : ` (${sourceOf(RULES[rule], tables)})`;
      return [rule === 'sound' ? 'Sound' : GRADES[first.severity], String(count), `${first.says}${more}${by}`];
    }),
  };
}
