import { type Finding, SEVERITIES } from '../../routing/site/finding.ts';

const weight = (finding: Finding): number => SEVERITIES.indexOf(finding.severity);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Findings as a reader takes them: fails, then warnings, then notes; within these by rule, then by id. */
export const inOrder = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (a, b) => weight(a) - weight(b) || compare(a.rule, b.rule) || compare(a.about[0] ?? '', b.about[0] ?? ''),
  );
