import { addTo } from '../../routing/lists/grouping.ts';
import type { Finding, Severity } from '../../routing/site/rules/finding.ts';

/** Findings of one rule and grade: the first of them, and what the others are about. */
export interface FindingGroup {
  readonly severity: Severity;
  readonly first: Finding;
  readonly count: number;
  /** The first thing that each other is about. */
  readonly others: readonly string[];
}

const ORDER: Readonly<Record<Severity, number>> = { fail: 0, warn: 1, note: 2 };

/** Findings as groups of one rule and grade, the worst grade first and each in the order that they were found in. */
export function findingsGrouped(findings: readonly Finding[]): readonly FindingGroup[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = `${finding.severity} ${finding.rule}`;
    addTo(groups, key, finding);
  }
  return [...groups.values()]
    .map((group) => ({
      severity: group[0]!.severity,
      first: group[0]!,
      count: group.length,
      others: group.slice(1).map(({ about }) => about[0] ?? ''),
    }))
    .sort((a, b) => ORDER[a.severity] - ORDER[b.severity]);
}

/** ` Likewise EV003, EV008 and 20 more.`, at most so many by name; empty where there are no others. */
export function likewise(others: readonly string[], most: number): string {
  if (others.length === 0) return '';
  const more = others.length > most ? ` and ${others.length - most} more` : '';
  return ` Likewise ${others.slice(0, most).join(', ')}${more}.`;
}
