import type { Site, SiteFile } from '../../routing/site/site.ts';
import { conduitKey } from '../branches/home-runs/conduit-names.ts';
import { panelSchedules } from '../supply/panels/panel-schedule.ts';
import type { Plan } from './plan-shape.ts';

type IssuedFile = NonNullable<SiteFile['issued']>;

/**
 * The numbers and names of a plan as they are issued: the spaces of every circuit in its panel, the name of every conduit
 * and of every junction box by each charger whose circuit goes through it. What was issued before and is not in the plan
 * stays issued, so that its number is not given to another.
 */
export function issueNames(site: Site, plan: Pick<Plan, 'circuits' | 'conduits' | 'boxes'>): IssuedFile {
  const circuits: Record<string, NonNullable<IssuedFile['circuits']>[string]> = Object.fromEntries(
    site.issued.circuits,
  );
  for (const { equipment, circuits: own } of panelSchedules(site).values())
    for (const { id, spaces } of own) if (spaces.length > 0) circuits[id] = { panel: equipment, spaces: [...spaces] };
  const junctions = new Set(plan.boxes.flatMap(({ kind, id }) => (kind === 'junction' ? [id] : [])));
  const to = new Map(plan.conduits.map((conduit) => [conduit.id, conduit.to]));
  const conduits: Record<string, string> = Object.fromEntries(site.issued.conduits);
  const boxes: Record<string, string> = Object.fromEntries(site.issued.boxes);
  for (const { charger, conduits: own } of plan.circuits) {
    own.forEach((id, i) => {
      conduits[conduitKey(charger, i + 1)] = id;
    });
    const passed = own.map((id) => to.get(id)!).filter((end) => junctions.has(end));
    passed.forEach((id, i) => {
      boxes[conduitKey(charger, i + 1)] = id;
    });
  }
  return {
    ...(Object.keys(circuits).length > 0 && { circuits }),
    ...(Object.keys(conduits).length > 0 && { conduits }),
    ...(Object.keys(boxes).length > 0 && { boxes }),
  };
}
