import { RULES } from '../../calc/checks/rules.ts';
import { kept } from '../../routing/kept/kept.ts';
import { type Finding, SEVERITIES, type Severity } from '../../routing/site/rules/finding.ts';

/** Findings with one cause: the same rule at the same severity. */
export interface FindingsByCause {
  readonly key: string;
  readonly severity: Severity;
  readonly rule: Finding['rule'];
  readonly heading: string;
  readonly findings: readonly Finding[];
}

/** Findings grouped by cause, what fails first; within a severity in the order in which the plan gives them. */
export const findingGroups = kept((findings: readonly Finding[]): readonly FindingsByCause[] => {
  const groups = new Map<string, { group: Omit<FindingsByCause, 'findings'>; findings: Finding[] }>();
  for (const finding of findings) {
    const { severity, rule } = finding;
    const key = `${severity} ${rule}`;
    const so = groups.get(key);
    if (so) so.findings.push(finding);
    else
      groups.set(key, {
        group: { key, severity, rule, heading: rule === 'sound' ? 'Sound' : RULES[rule].title },
        findings: [finding],
      });
  }
  return [...groups.values()]
    .map(({ group, findings: own }) => ({ ...group, findings: own }))
    .sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
});
