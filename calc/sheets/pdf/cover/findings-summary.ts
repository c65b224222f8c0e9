import { type Finding, GRADES } from '../../../../routing/site/rules/finding.ts';
import { sourceOf } from '../../../checks/checks.ts';
import { RULES } from '../../../checks/rules.ts';
import { standingWords } from '../../../checks/standing.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import type { Table } from '../kit/table.ts';

/** Places of one matter that are listed by id. */
const MOST_PLACES = 14;

/** What the plan has to say of the site, in its order: one row a matter, with one sentence of it and all its places. */
export function findingsSummary(plan: Plan, tables: CodeTables, width: number): Table {
  const groups = new Map<string, Finding[]>();
  for (const finding of plan.findings) {
    const key = `${finding.severity} ${finding.rule}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return {
    short: 'findings',
    title: 'Findings',
    width,
    lead: [`${standingWords(plan)}.`.replace(/\.\.$/, '.')],
    columns: [{ head: 'Grade' }, { head: 'No.', align: 'right' }, { head: 'What, where, and by which rule' }],
    rows: [...groups.values()].map((group) => {
      const [first] = group as [Finding, ...Finding[]];
      const others = group.slice(1).map(({ about }) => about[0] ?? '');
      const more =
        others.length === 0
          ? ''
          : ` Likewise ${others.slice(0, MOST_PLACES).join(', ')}${others.length > MOST_PLACES ? ` and ${others.length - MOST_PLACES} more` : ''}.`;
      const { rule } = first;
      const by = rule === 'sound' ? '' : ` (${sourceOf(RULES[rule], tables)})`;
      return [rule === 'sound' ? 'Sound' : GRADES[first.severity], String(group.length), `${first.says}${more}${by}`];
    }),
  };
}
