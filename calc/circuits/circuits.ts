import type { Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import type { BranchCircuit } from '../conduits/named.ts';
import { remembered } from '../memo.ts';
import type { Circuit, PhasePair } from '../plan-shape.ts';

/** What the supply has at the box of a charger. */
export interface AtBox {
  readonly totalDropPercent: number;
  readonly volts: number;
}

/** Circuits of every piece of equipment, in the order of its chargers and without those that have none. */
export interface EquipmentCircuits {
  readonly branches: EquipmentBranches;
  readonly phases: readonly PhasePair[];
  readonly circuits: readonly (Circuit | null)[];
}

/** The circuits of one piece of equipment, complete. */
export const equipmentCircuits = remembered(
  (
    branches: EquipmentBranches,
    phases: readonly PhasePair[],
    atBoxes: readonly (AtBox | null)[],
  ): EquipmentCircuits => {
    const circuits = branches.circuits.map((circuit, i) => {
      const atBox = atBoxes[i];
      return circuit === null || !atBox ? null : complete(circuit, phases[i]!, atBox.totalDropPercent, atBox.volts);
    });
    return { branches, phases, circuits };
  },
);

const complete = remembered(
  (circuit: BranchCircuit, phases: PhasePair, totalDropPercent: number, voltsAtBox: number): Circuit => {
    const { way: _way, branch: _branch, ...own } = circuit;
    return { ...own, phases, totalDropPercent, voltsAtBox };
  },
);

/** All circuits in the order of the site's chargers. */
export function inChargerOrder(site: Site, all: readonly EquipmentCircuits[]): readonly Circuit[] {
  const places = new Array<Circuit | null>(site.chargers.length).fill(null);
  for (const { branches, circuits } of all) {
    const { positions } = branches;
    for (let i = 0; i < positions.length; i++) places[positions[i]!] = circuits[i]!;
  }
  return places.filter((circuit) => circuit !== null);
}
