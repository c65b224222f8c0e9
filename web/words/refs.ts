import type { UncountedPlan } from '../../calc/plan/plan-shape.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { elementOf, listOf, type Ref } from '../document/change/element-lists.ts';

/**
 * What stands on the board for an id: a charger is shown by its drop, a conduit by the drops of its circuits, a junction by
 * those of its conduits.
 */
export function refsOf(file: SiteFile, plan: UncountedPlan, id: string): readonly Ref[] {
  const list = listOf(file, id);
  if (list === 'chargers') return [dropRefOf(file, id)].filter((ref) => ref !== null);
  if (list === 'loads') return [{ list: 'equipment', id: elementOf(file, 'loads', id)!.from }];
  if (list) return [{ list, id }];
  const conduit = plan.conduits.find((each) => each.id === id);
  if (conduit) return conduit.circuits.flatMap((charger) => dropRefOf(file, charger) ?? []);
  const box = plan.boxes.find((each) => each.id === id);
  const drops = box?.conduits.flatMap((one) => refsOf(file, plan, one)) ?? [];
  return [...new Map(drops.map((ref) => [ref.id, ref])).values()];
}

/**
 * What stands on the board of what a finding is about, each once: all of the kind that it names first. Of a branch that is
 * about its drop and the panel it comes from the drop is shown, and of 28 drops every one.
 */
export function refsAbout(file: SiteFile, plan: UncountedPlan, ids: readonly string[]): readonly Ref[] {
  const found = new Map<string, Ref>();
  let list: Ref['list'] | undefined;
  for (const id of ids)
    for (const ref of refsOf(file, plan, id)) {
      list ??= ref.list;
      if (ref.list === list) found.set(ref.id, ref);
    }
  return [...found.values()];
}

export function dropRefOf(file: SiteFile, charger: string): Ref | null {
  const drop = elementOf(file, 'chargers', charger)?.drop;
  return drop === undefined ? null : { list: 'drops', id: drop };
}
