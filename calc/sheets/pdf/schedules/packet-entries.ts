import { kept } from '../../../../routing/kept/kept.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Circuit } from '../../../plan-file/branches.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';

/** One calculation of the packet: what it is of, and its number there, by which the schedules name it. */
export interface PacketEntry {
  readonly number: string;
  readonly kind: 'equipment' | 'feeder' | 'circuits';
  /** Ids of what it is of; of circuits that are alike, the one that it is worked for first. */
  readonly of: readonly string[];
}

/**
 * The calculations of a plan in the order of the packet: from each source out, equipment after its feeder, then the
 * branch circuits. Circuits of one panel that are alike but for their length and lines are one, worked for that with the
 * greatest drop.
 */
export function packetEntries(site: Site, plan: Pick<Plan, 'circuits'>): readonly PacketEntry[] {
  return entriesOf(site, plan.circuits);
}

const entriesOf = kept((site: Site, circuits: readonly Circuit[]): readonly PacketEntry[] => {
  const { nodes } = treeOf(site);
  const entries: Omit<PacketEntry, 'number'>[] = nodes.flatMap(({ equipment, feeder }) => [
    ...(feeder === null ? [] : [{ kind: 'feeder' as const, of: [feeder.id] }]),
    { kind: 'equipment' as const, of: [equipment.id] },
  ]);
  const rated = new Map(
    site.chargers.map(({ id, amps, volts, phases, branchDrop }) => [id, `${amps} ${volts} ${phases} ${branchDrop}`]),
  );
  const alike = new Map<string, Circuit[]>();
  for (const circuit of circuits) {
    const { from, breakerAmps, conductor, grounding, pilot, currentCarrying, ambientC, sizedBy } = circuit;
    const key = [
      from,
      rated.get(circuit.charger),
      breakerAmps,
      conductor.size,
      conductor.metal,
      conductor.insulation,
      grounding.size,
      pilot,
      currentCarrying,
      ambientC,
      sizedBy,
    ].join('|');
    addTo(alike, key, circuit);
  }
  for (const group of alike.values()) {
    const worst = group.reduce((most, one) => (one.branchDropPercent > most.branchDropPercent ? one : most));
    const others = group.filter((one) => one !== worst);
    entries.push({ kind: 'circuits', of: [worst, ...others].map(({ charger }) => charger) });
  }
  return entries.map((entry, i) => ({ ...entry, number: `C-${String(i + 1).padStart(3, '0')}` }));
});

/** Number of the calculation that each feeder, piece of equipment and charger stands in. */
export const packetNumbers = kept(
  (entries: readonly PacketEntry[]): ReadonlyMap<string, string> =>
    new Map(entries.flatMap(({ of, number }) => of.map((id) => [id, number] as const))),
);
