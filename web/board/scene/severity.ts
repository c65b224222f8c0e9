import { remembered } from '../../../calc/memo.ts';
import type { Finding, Severity } from '../../../routing/site/finding.ts';

const RANK: Readonly<Record<Severity, number>> = { fail: 2, warn: 1, note: 0 };

/** The worst severity with which findings speak of an id first: the culprit, not what stands beside it. */
export const severityById = remembered((findings: readonly Finding[]): ReadonlyMap<string, Severity> => {
  const worst = new Map<string, Severity>();
  for (const { severity, about } of findings) {
    const culprit = about[0];
    if (culprit === undefined) continue;
    const so = worst.get(culprit);
    if (so === undefined || RANK[severity] > RANK[so]) worst.set(culprit, severity);
  }
  return worst;
});
