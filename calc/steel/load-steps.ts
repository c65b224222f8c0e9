import { kept } from '../../routing/kept/kept.ts';
import type { Hung } from '../plan-file/hung.ts';

/** How much members carry, from nothing up: the steps of the picture. */
export const LOAD_STEPS = ['nothing', 'under 100 lb', '100 to 300 lb', '300 lb and over'] as const;
export type LoadStep = (typeof LOAD_STEPS)[number];

/** The step of a member by the pounds that hang from it. */
export function loadStep(pounds: number | undefined): LoadStep {
  if (pounds === undefined || pounds <= 0) return 'nothing';
  return pounds < 100 ? 'under 100 lb' : pounds < 300 ? '100 to 300 lb' : '300 lb and over';
}

/** Pounds of each member that carries any. */
export const poundsByMember = kept(
  (hung: readonly Hung[]): ReadonlyMap<string, number> => new Map(hung.map(({ member, pounds }) => [member, pounds])),
);
