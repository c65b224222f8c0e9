import type { Plan } from '../../calc/plan-shape.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { elementOf, listOf, type Ref } from '../document/element-lists.ts';

/** What stands on the board for an id: a charger is shown by its drop, a conduit by the drops of its circuits. */
export function refsOf(file: SiteFile, plan: Plan, id: string): readonly Ref[] {
  const list = listOf(file, id);
  if (list === 'chargers') return [dropOf(file, id)].filter((ref) => ref !== null);
  if (list === 'loads') return [{ list: 'equipment', id: elementOf(file, 'loads', id)!.from }];
  if (list) return [{ list, id }];
  const conduit = plan.conduits.find((each) => each.id === id);
  return conduit ? conduit.circuits.flatMap((charger) => dropOf(file, charger) ?? []) : [];
}

/** The refs of the first id, of those that a finding is about, that stands on the board. */
export function firstRefs(file: SiteFile, plan: Plan, ids: readonly string[]): readonly Ref[] {
  for (const id of ids) {
    const refs = refsOf(file, plan, id);
    if (refs.length > 0) return refs;
  }
  return [];
}

export function dropOf(file: SiteFile, charger: string): Ref | null {
  const drop = elementOf(file, 'chargers', charger)?.drop;
  return drop === undefined ? null : { list: 'drops', id: drop };
}
