import { addTo } from '../../../routing/lists/grouping.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import { failsOf } from '../forced-words.ts';

/** What a change broke: findings that fail and did not before, and the chargers that they are about. */
export interface Broken {
  readonly findings: readonly Finding[];
  readonly chargers: readonly string[];
}

type Planned = { readonly site: Site; readonly plan: Pick<UncountedPlan, 'findings' | 'runs' | 'conduits'> };

const keyOf = ({ rule, about }: Finding): string => `${rule}\n${about.join('\n')}`;

/**
 * What fails of the chargers of a site, of all that fails in it where nothing stood before; else what did not fail
 * before, of chargers that were there. What is about no charger, drop, raceway or conduit of one is left out: no way or
 * drop could mend it.
 */
export function brokenIn({ site, plan }: Planned, before: Planned | null): Broken {
  const had = new Set(before === null ? [] : failsOf(before.plan.findings).map(keyOf));
  const stood = before === null ? null : new Set(before.site.chargers.map(({ id }) => id));
  const fresh = failsOf(plan.findings).filter((one) => !had.has(keyOf(one)));
  if (fresh.length === 0) return { findings: [], chargers: [] };
  const ofElement = chargersOf({ site, plan });
  const hanging = new Set(site.chargers.flatMap(({ id, drop }) => [id, drop]));
  const chargers = new Set<string>();
  const findings = fresh.filter(({ about }) => {
    // What is about a drop is not about all that lie in the raceway beside it.
    const nearest = about.filter((id) => hanging.has(id));
    const own = (nearest.length > 0 ? nearest : about)
      .flatMap((id) => ofElement.get(id) ?? [])
      .filter((id) => stood?.has(id) ?? true);
    for (const id of own) chargers.add(id);
    return own.length > 0;
  });
  const order = site.chargers.map(({ id }) => id).filter((id) => chargers.has(id));
  return { findings, chargers: order };
}

/** The chargers of each drop, raceway and conduit, and of each charger itself. */
function chargersOf({ site, plan }: Planned): ReadonlyMap<string, readonly string[]> {
  const of = new Map<string, string[]>();
  const add = (id: string, charger: string): void => {
    addTo(of, id, charger);
  };
  for (const { id, drop } of site.chargers) {
    add(id, id);
    add(drop, id);
  }
  for (const { charger, raceways } of plan.runs) for (const id of new Set(raceways)) add(id, charger);
  for (const { id, circuits } of plan.conduits) for (const charger of circuits) add(id, charger);
  return of;
}
