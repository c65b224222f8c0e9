import { extentWords, foundWords, idleChecks, madeChecks } from '../../checks/standing.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Check } from '../../plan-file/plan-file.ts';
import { type TextColumn, textTable } from './text-table.ts';

const COLUMNS: readonly TextColumn<Check>[] = [
  { head: 'found', text: foundWords },
  { head: 'looked at', text: ({ lookedAt }) => lookedAt.toLocaleString('en-US'), align: 'right' },
  { head: 'check', text: ({ title }) => title },
  { head: 'by', text: ({ source }) => source },
];

/** What was looked at and what was not, the worst first, as a person reads it at a terminal. */
export function checkLines({ checks, notChecked }: Pick<Plan, 'checks' | 'notChecked'>): string {
  const idle = idleChecks(checks);
  return [
    `${extentWords(checks)}\n${textTable(madeChecks(checks), COLUMNS)}`,
    idle.length > 0 ? `Nothing drawn for: ${idle.join('; ')}.` : '',
    notChecked.length > 0 ? `Not looked at: ${notChecked.join('; ')}.` : '',
  ]
    .filter(Boolean)
    .join('\n');
}
