import { kept } from '../../routing/kept/kept.ts';
import type { Site } from '../../routing/site/site.ts';
import type { UncountedPlan } from './plan-shape.ts';

/**
 * Ids of the stalls that have a charger: one whose run is within its limit and whose cord covers as much of the cases
 * there as the rules ask for.
 */
export const servedStalls = kept((plan: UncountedPlan, rules: Site['rules']): ReadonlySet<string> => {
  const running = new Set(plan.runs.filter(({ ok }) => ok).map(({ charger }) => charger));
  const served = plan.reach.filter(({ charger, coverage }) => running.has(charger) && coverage >= rules.coverage);
  return new Set(served.map(({ stall }) => stall));
});
