import type { UncountedPlan } from '../../../../calc/plan/plan-shape.ts';
import type { Site } from '../../../../routing/site/site.ts';

/** Chargers at some drops to which no branch comes: none leads there, or only one through the air to a pedestal. */
export function waylessAt(
  { findings }: UncountedPlan,
  { chargers }: Site,
  drops: ReadonlySet<string>,
): readonly string[] {
  const without = new Set(
    findings.flatMap(({ rule, about }) => (rule === 'no-run' || rule === 'pedestal-feed' ? [about[0]!] : [])),
  );
  if (without.size === 0) return [];
  return chargers.flatMap(({ id, drop }) => (drops.has(drop) && without.has(id) ? [id] : []));
}
