import { type Finding, SEVERITIES } from '../../routing/site/finding.ts';

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Findings as a reader takes them: fails, then warnings, then notes; within these by rule, then by id. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  // By rule first: what one check says is nearly in order already, and a sort of that is quick.
  const byRule = new Map<string, Finding[]>();
  for (const finding of findings) {
    const others = byRule.get(finding.rule);
    if (others === undefined) byRule.set(finding.rule, [finding]);
    else others.push(finding);
  }
  const rules = [...byRule.keys()].sort(compare);
  for (const group of byRule.values()) group.sort((a, b) => compare(a.about[0] ?? '', b.about[0] ?? ''));
  const sorted: Finding[] = [];
  for (const severity of SEVERITIES)
    for (const rule of rules)
      for (const finding of byRule.get(rule)!) if (finding.severity === severity) sorted.push(finding);
  return sorted;
}
