import { kept } from '../../routing/kept/kept.ts';
import type { Plan } from './plan-shape.ts';

/**
 * Of each stall that a charger serves, the share of parking directions and inlets that its best cord reaches, 0 to 1.
 * A stall that no charger is meant to serve is not in it.
 */
export const stallCoverage = kept((reach: Plan['reach']): ReadonlyMap<string, number> => {
  const best = new Map<string, number>();
  for (const { stall, coverage } of reach) best.set(stall, Math.max(best.get(stall) ?? 0, coverage));
  return best;
});

export const COVERAGE_STEPS = ['unserved', 'none', 'under half', 'half and over', 'all'] as const;
/** How a stall stands by its coverage: the steps of the shading. */
export type CoverageStep = (typeof COVERAGE_STEPS)[number];

/** The step of a coverage; undefined is a stall without a charger. */
export function coverageStep(coverage: number | undefined): CoverageStep {
  if (coverage === undefined) return 'unserved';
  if (coverage >= 1) return 'all';
  if (coverage <= 0) return 'none';
  return coverage < 0.5 ? 'under half' : 'half and over';
}
