import type { Finding, Severity } from '../../routing/site/rules/finding.ts';
import type { Check } from '../plan-file/plan-file.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import type { Looked, Rule } from './looked.ts';
import { RULE_LIST } from './rules.ts';

export const sourceOf = ({ source }: Rule, tables: CodeTables): string =>
  typeof source === 'string' ? source : source(tables);

/** Every check of the closed list, in its order, with what it looked at and what was found. */
export function checksOf(at: Looked, findings: readonly Finding[]): readonly Check[] {
  const counts = new Map<Finding['rule'], Record<Severity, number>>();
  for (const { rule, severity } of findings) {
    const own = counts.get(rule) ?? { fail: 0, warn: 0, note: 0 };
    own[severity]++;
    counts.set(rule, own);
  }
  return RULE_LIST.map((rule) => ({
    rule: rule.rule,
    title: rule.title,
    source: sourceOf(rule, at.tables),
    lookedAt: rule.lookedAt(at),
    ...(counts.get(rule.rule) ?? { fail: 0, warn: 0, note: 0 }),
  }));
}

/** How many checks had something to look at, and how many things they were applied to in all. */
export interface CheckedExtent {
  readonly checks: number;
  readonly things: number;
}

export function checkedExtent(at: Looked): CheckedExtent {
  let [checks, things] = [0, 0];
  for (const { lookedAt } of RULE_LIST) {
    const count = lookedAt(at);
    if (count > 0) checks++;
    things += count;
  }
  return { checks, things };
}
