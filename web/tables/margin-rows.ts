import { type Margins, marginsOf } from '../../calc/plan/margins.ts';
import type { UncountedPlan } from '../../calc/plan/plan-shape.ts';
import { kept } from '../../routing/kept/kept.ts';
import type { Site } from '../../routing/site/site.ts';
import { worstShare } from '../words/margin-scale.ts';

/** One charger as the table of margins shows it. */
export interface MarginRow {
  readonly margins: Margins;
  readonly drop: string;
  readonly stalls: string;
  /** The least of its three shares of full scale. */
  readonly worst: number;
}

/** A charger without a figure comes before all that have one: it has no run or reaches no stall. */
export const NO_FIGURE = Number.NEGATIVE_INFINITY;

/** Every charger's margins, the worst charger first; those that fare alike in the order of the site. */
export const marginRows = kept((plan: UncountedPlan, site: Site): readonly MarginRow[] => {
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const margins = marginsOf(plan, site);
  return site.chargers
    .flatMap(({ id, drop, stalls }): MarginRow[] => {
      const own = margins.get(id);
      if (!own) return [];
      const words = stalls.map((stall) => labels.get(stall) ?? stall).join(', ');
      return [{ margins: own, drop, stalls: words, worst: worstShare(own) }];
    })
    .sort((a, b) => (a.worst === b.worst ? 0 : a.worst - b.worst));
});
