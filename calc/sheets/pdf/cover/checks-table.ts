import { GRADES } from '../../../../routing/site/rules/finding.ts';
import { extentWords, foundWords, idleChecks, madeChecks, worstSeverity } from '../../../checks/standing.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Table } from '../kit/tables/table.ts';

/** Every check that was made, the worst first: what it found, on how much, by which rule; the rest in a line below. */
export function checksTable({ checks }: Pick<Plan, 'checks'>, width: number): Table {
  const idle = idleChecks(checks);
  return {
    short: 'checks',
    title: 'Checks made',
    width,
    lead: [`${extentWords(checks)}.`],
    columns: [
      { head: 'Grade' },
      { head: 'Found', most: 9 },
      { head: 'Of', align: 'right' },
      { head: 'Check, and by which rule' },
    ],
    rows: madeChecks(checks).map((check) => {
      const worst = worstSeverity(check);
      return [
        worst === null ? '' : GRADES[worst],
        foundWords(check),
        check.lookedAt.toLocaleString('en-US'),
        `${check.title} (${check.source})`,
      ];
    }),
    ...(idle.length > 0 && { foot: [`Nothing drawn for: ${idle.join('; ')}.`] }),
  };
}

/** What of the job nobody looked at, for whoever has to. */
export const notCheckedTable = ({ notChecked }: Pick<Plan, 'notChecked'>, width: number): Table => ({
  short: 'not looked at',
  title: 'Not looked at: for others to check',
  isPlain: true,
  width,
  columns: [{ head: '', align: 'right', least: 1.6 }, { head: '' }],
  rows: notChecked.map((text, i) => [`${i + 1}.`, `${text.charAt(0).toUpperCase()}${text.slice(1)}`]),
});
