import { marginsOf } from '../../../calc/plan/margins.ts';
import type { Severity } from '../../../routing/site/rules/finding.ts';
import { leftLength } from '../../words/lengths.ts';
import { chargersByDrop } from './chargers-by-drop.ts';
import type { Scene } from './scene.ts';
import { severityAmong } from './severity.ts';

/** How a drop or a piece of equipment fares, as it is drawn beside its name. */
export interface Sign {
  readonly severity: Severity | null;
  /** By how much a cord is short, in words, where one is. */
  readonly short: string;
}

export const severityOf = ({ site, plan }: Scene, id: string): Severity | null =>
  severityAmong(plan.findings, site.chargers, id);

/** How a drop fares: the worst finding about it or a charger on it. Looked up where it is drawn, not for all drops. */
export function signOf(scene: Scene, drop: string): Sign {
  const { site, plan, units } = scene;
  const margins = marginsOf(plan, site);
  let severity = severityOf(scene, drop);
  let shortest = 0;
  for (const charger of chargersByDrop(site.chargers).get(drop) ?? []) {
    const own = severityOf(scene, charger);
    if (own === 'fail' || (own === 'warn' && severity !== 'fail')) severity = own;
    shortest = Math.min(shortest, margins.get(charger)?.cord?.left ?? 0);
  }
  const short = shortest < 0 && Number.isFinite(shortest) ? `${leftLength(shortest, units)} short` : '';
  return { severity, short };
}
