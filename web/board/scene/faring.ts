import { marginsOf } from '../../../calc/plan/margins.ts';
import { changedPlaces } from '../../../routing/kept/changed-places.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { positionsOf } from '../../document/change/element-lists.ts';
import { chargersByDrop } from './chargers-by-drop.ts';
import type { Scene } from './scene.ts';

/** Ids of the drops that may fare otherwise than they did: a margin of theirs is another, or a finding about them. */
export function dropsWithChangedResults(was: Scene, now: Scene): ReadonlySet<string> {
  const drops = new Set<string>();
  const { chargers } = now.site;
  if (chargers !== was.site.chargers) return new Set(chargersByDrop(chargers).keys());
  const margins = marginsOf(now.plan, now.site).values();
  for (const i of changedPlaces(margins, marginsOf(was.plan, was.site).values())) drops.add(chargers[i]!.drop);
  const places = positionsOf(chargers);
  for (const id of changedAbouts(was.plan.findings, now.plan.findings)) {
    const place = places.get(id);
    drops.add(place === undefined ? id : chargers[place]!.drop);
  }
  return drops;
}

/** What findings are about that only one of two lists holds. */
function changedAbouts(a: readonly Finding[], b: readonly Finding[]): readonly string[] {
  if (a.length === b.length && changedPlaces(a, b).length === 0) return [];
  const held = new Set(a);
  const only = b.filter((finding) => !held.delete(finding));
  return [...only, ...held].flatMap(({ about }) => about);
}
