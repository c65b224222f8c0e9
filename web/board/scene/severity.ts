import { remembered } from '../../../calc/memo.ts';
import type { Finding, Severity } from '../../../routing/site/finding.ts';
import type { Site } from '../../../routing/site/site.ts';

const RANK: Readonly<Record<Severity, number>> = { fail: 2, warn: 1, note: 0 };
/** A finding about more chargers than these speaks of what feeds them, and marks that. */
const MOST_CHARGERS = 3;

const chargerIds = remembered(
  (chargers: Site['chargers']): ReadonlySet<string> => new Set(chargers.map(({ id }) => id)),
);

/** The worst severity with which findings speak of each id. */
export const severityById = remembered(
  (findings: readonly Finding[], chargers: Site['chargers']): ReadonlyMap<string, Severity> => {
    const isCharger = chargerIds(chargers);
    const worst = new Map<string, Severity>();
    for (const { severity, about } of findings) {
      const many = about.length > MOST_CHARGERS && about.filter((id) => isCharger.has(id)).length > MOST_CHARGERS;
      for (const id of about) {
        if (many && isCharger.has(id)) continue;
        const so = worst.get(id);
        if (so === undefined || RANK[severity] > RANK[so]) worst.set(id, severity);
      }
    }
    return worst;
  },
);
