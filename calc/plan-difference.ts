import { changedPlaces } from '../routing/lists/changed-places.ts';
import type { Charger } from '../routing/site/site.ts';
import { remembered } from './memo.ts';
import type { Circuit, Plan } from './plan-shape.ts';

/** Where each charger stands in their list. */
export const chargerPlaces = remembered(
  (chargers: readonly Charger[]): ReadonlyMap<string, number> => new Map(chargers.map(({ id }, place) => [id, place])),
);

/**
 * Places of the chargers whose run, circuit or cords are other objects than in another plan of the same chargers, in no
 * order; null where the plans cannot be laid side by side, for their runs or cords are not of the same number. Circuits
 * may come and go: a charger without a run has none.
 */
export function chargersAnew(now: Plan, was: Plan, chargers: readonly Charger[]): ReadonlySet<number> | null {
  if (now.runs.length !== was.runs.length || now.reach.length !== was.reach.length) return null;
  if (now.runs.length !== chargers.length) return null;
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
  addCircuits(changed, now.circuits, was.circuits, places);
  return changed;
}

/** Circuits stand in the order of the chargers, but not every charger has one: two lists are gone through abreast. */
function addCircuits(
  changed: Set<number>,
  now: readonly Circuit[],
  was: readonly Circuit[],
  places: ReadonlyMap<string, number>,
): void {
  if (now === was) return;
  const placeOf = (circuit: Circuit | undefined): number =>
    circuit === undefined ? Number.POSITIVE_INFINITY : (places.get(circuit.charger) ?? Number.POSITIVE_INFINITY);
  if (now.length === was.length && now.length === places.size) {
    for (const i of changedPlaces(now, was)) changed.add(i);
    return;
  }
  let i = 0;
  let k = 0;
  while (i < now.length || k < was.length) {
    if (i < now.length && Object.is(now[i], was[k])) {
      i++;
      k++;
      continue;
    }
    const [a, b] = [placeOf(now[i]), placeOf(was[k])];
    changed.add(Math.min(a, b));
    if (a <= b) i++;
    if (b <= a) k++;
  }
}

/** The circuit of the charger at a place, or undefined where it has none. */
export function circuitAt(
  circuits: readonly Circuit[],
  chargers: readonly Charger[],
  place: number,
): Circuit | undefined {
  const charger = chargers[place]?.id;
  if (circuits[place]?.charger === charger) return circuits[place];
  // Where some have none it stands further to the front.
  const places = chargerPlaces(chargers);
  let low = 0;
  let high = Math.min(place, circuits.length) - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const at = places.get(circuits[middle]!.charger)!;
    if (at === place) return circuits[middle];
    if (at < place) low = middle + 1;
    else high = middle - 1;
  }
  return undefined;
}
