import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';

/** The phase of the build-out in which each element is laid or set, by its id; 1 where it is not named. */
export type BuildPhases = ReadonlyMap<string, number>;

/** The phases of a lot: 1 to the last in which a stall gets its charger. */
export const phasesOf = ({ stalls }: Pick<Site, 'stalls'>): readonly number[] =>
  [...new Set([1, ...stalls.map(({ phase = 1 }) => phase)])].sort((a, b) => a - b);

/** A charger comes with the first of the stalls that it serves. */
export function chargerPhases({ stalls, chargers }: Pick<Site, 'stalls' | 'chargers'>): BuildPhases {
  const own = new Map(stalls.map(({ id, phase = 1 }) => [id, phase]));
  return new Map(
    chargers.map(({ id, stalls: served }) => [
      id,
      served.length === 0 ? 1 : Math.min(...served.map((one) => own.get(one) ?? 1)),
    ]),
  );
}

/**
 * In which phase everything is laid: chargers and drops with their stalls; a raceway whole with the first circuit or feeder
 * that lies in it, and with it all conduits in it, those for later circuits empty; a panel, what is ahead of it and its
 * feeder with its first charger, for all that it will feed. Conductors, breakers and cords are their chargers'.
 */
export function buildPhases(site: Site, { runs, conduits }: Pick<Plan, 'runs' | 'conduits'>): BuildPhases {
  const phases = new Map(chargerPhases(site));
  const least = (id: string, phase: number): void => {
    phases.set(id, Math.min(phases.get(id) ?? Number.POSITIVE_INFINITY, phase));
  };
  const of = (id: string): number => phases.get(id) ?? 1;
  for (const { id, phase = 1 } of site.stalls) phases.set(id, phase);
  for (const { id, drop } of site.chargers) least(drop, of(id));
  for (const { id, from } of site.chargers) upTo(site, from, (equipment) => least(equipment, of(id)));
  for (const { id, from } of site.loads) if (id !== '') upTo(site, from, (equipment) => least(equipment, 1));
  for (const { id, to } of site.feeders) phases.set(id, of(to));
  for (const { charger, raceways } of runs) for (const id of raceways) least(id, of(charger));
  for (const { feeder, way } of feederRoutesOf(site).routes)
    for (const id of way?.raceways ?? []) least(id, of(feeder));
  for (const { id, raceways, circuits } of conduits) phases.set(id, Math.min(...raceways.map(of), ...circuits.map(of)));
  // A box in the way of a conduit is set with it.
  for (const { id, from, to } of conduits) for (const end of [from, to]) if (phases.has(end)) least(end, of(id));
  return phases;
}

/** A piece of equipment and all that feeds it. */
function upTo({ feeders }: Site, from: string, tell: (equipment: string) => void): void {
  const seen = new Set<string>();
  for (let at: string | undefined = from; at !== undefined && !seen.has(at); ) {
    seen.add(at);
    tell(at);
    const here: string = at;
    at = feeders.find(({ to }) => to === here)?.from;
  }
}
