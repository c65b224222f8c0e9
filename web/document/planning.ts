import type { Counting } from '../../calc/plan/counting.ts';
import type { Plan, UncountedPlan } from '../../calc/plan/plan-shape.ts';
import { planned } from '../../calc/plan/planned.ts';
import type { Site } from '../../routing/site/site.ts';

/**
 * Plans on the page. What counts and weighs a plan comes when the first screen stands (`counted-plan.ts`): who reads a
 * takeoff or what hangs imports that, or does without until it has come (`ifCounted`).
 */
let counting: Counting | null = null;
const listeners = new Set<() => void>();

/** A plan with its takeoff and what hangs, once what counts them has come; null until then. */
export const ifCounted = (plan: UncountedPlan): Plan | null => (counting === null ? null : (plan as Plan));

export const isCounted = (): boolean => counting !== null;

/** Hears once what counts has come. Returns how to stop. */
export function onCounted(hear: () => void): () => void {
  listeners.add(hear);
  return () => listeners.delete(hear);
}

export function countWith(come: Counting): void {
  counting = come;
  for (const hear of listeners) hear();
}

const now = (): Counting => {
  if (counting === null) throw new RangeError('what counts a plan has not come: import counted-plan.ts');
  return counting;
};

/** The plan of a site; `withCounts` of `counted-plan.ts` gives it with its takeoff and what hangs. */
export const pagePlan = (site: Site): UncountedPlan => planned(site, now);
