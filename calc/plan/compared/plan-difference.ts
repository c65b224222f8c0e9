import { changedPlaces } from '../../../routing/kept/changed-places.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { indexById } from '../../../routing/site/ids.ts';
import type { Charger } from '../../../routing/site/site.ts';
import { feedsOf } from '../../branches/feeds.ts';
import type { BranchCircuit } from '../../branches/named.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import type { UncountedPlan } from '../plan-shape.ts';

/** Where each charger stands in their list. */
export const chargerPlaces = kept((chargers: readonly Charger[]): ReadonlyMap<string, number> => indexById(chargers));

/**
 * Places of the chargers whose run, branch circuit, lines or cords are others than in another plan of the same chargers,
 * in no order; null where the plans cannot be laid side by side, for their runs or cords are not of the same number. A
 * branch is looked at and not the circuit made of it: what others draw changes the volts at a box, and nothing else.
 */
export function chargersAnew(
  now: UncountedPlan,
  was: UncountedPlan,
  chargers: readonly Charger[],
): ReadonlySet<number> | null {
  if (now.runs.length !== was.runs.length || now.reach.length !== was.reach.length) return null;
  if (now.runs.length !== chargers.length || now.branches.length !== was.branches.length) return null;
  const places = chargerPlaces(chargers);
  const changed = new Set<number>();
  for (const i of changedPlaces(now.runs, was.runs)) {
    if (now.runs[i]!.charger !== was.runs[i]!.charger) return null;
    changed.add(i);
  }
  const { reach } = now;
  for (const i of changedPlaces(reach, was.reach)) {
    if (reach[i]!.charger !== was.reach[i]!.charger) return null;
    changed.add(places.get(reach[i]!.charger)!);
  }
  const { partition } = feedsOf(chargers);
  const add = (part: number, own: readonly unknown[], before: readonly unknown[]): void => {
    for (const i of changedPlaces(own, before)) changed.add(partition.places[part]![i]!);
  };
  for (const part of changedPlaces(now.branches, was.branches))
    add(part, now.branches[part]!.circuits, was.branches[part]!.circuits);
  for (const part of changedPlaces(now.phases, was.phases)) add(part, now.phases[part]!, was.phases[part]!);
  return changed;
}

/** The branch circuit of the charger at a place of their list, or null where it has none. */
export function branchAt(plan: UncountedPlan, chargers: readonly Charger[], place: number): BranchCircuit | null {
  const { partOf, placeIn } = feedsOf(chargers).partition;
  return plan.branches[partOf[place]!]?.circuits[placeIn[place]!] ?? null;
}

/** Lines of that circuit, or null where there is none. */
export function phasesAt(plan: UncountedPlan, chargers: readonly Charger[], place: number): PhasePair | null {
  if (branchAt(plan, chargers, place) === null) return null;
  const { partOf, placeIn } = feedsOf(chargers).partition;
  return plan.phases[partOf[place]!]![placeIn[place]!]!;
}
