import { remembered } from '../../../calc/memo.ts';
import type { Finding, Severity } from '../../../routing/site/finding.ts';
import type { Site } from '../../../routing/site/site.ts';

const RANK: Readonly<Record<Severity, number>> = { fail: 2, warn: 1, note: 0 };
/** A finding about more chargers than these speaks of what feeds them, and marks that. */
const MOST_CHARGERS = 3;

/** The worst severity with which findings speak of each id. */
export const severityById = remembered(
  (findings: readonly Finding[], chargers: Site['chargers']): ReadonlyMap<string, Severity> => {
    const isCharger = new Set(chargers.map(({ id }) => id));
    const worst = new Map<string, Severity>();
    for (const { severity, about } of findings) {
      const many = about.filter((id) => isCharger.has(id)).length > MOST_CHARGERS;
      for (const id of about) {
        if (many && isCharger.has(id)) continue;
        const so = worst.get(id);
        if (so === undefined || RANK[severity] > RANK[so]) worst.set(id, severity);
      }
    }
    return worst;
  },
);
