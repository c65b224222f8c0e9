import type { Charger, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import type { BranchCircuit } from '../conduits/named.ts';
import { picking, remembered } from '../memo.ts';
import type { Circuit, PhasePair } from '../plan-shape.ts';
import type { BoxVolts, BranchOhms } from '../supply/box-volts.ts';
import type { SupplyLines } from '../supply/supply-lines.ts';

/** The circuits of one piece of equipment, complete, with the lines that its chargers hang on. */
export interface EquipmentCircuits {
  readonly branches: EquipmentBranches;
  /** In the order of its chargers, as is `circuits`. */
  readonly phases: readonly PhasePair[];
  readonly circuits: readonly (Circuit | null)[];
}

/** Ohms of one line of each charger's branch, in the order of the site's chargers; null where it has none. */
export function ohmsOf(site: Site, branches: readonly EquipmentBranches[]): readonly (BranchOhms | null)[] {
  const ohms = new Array<BranchOhms | null>(site.chargers.length).fill(null);
  for (const one of branches) for (let i = 0; i < one.positions.length; i++) ohms[one.positions[i]!] = one.ohms[i]!;
  return ohms;
}

/** Completes the branches of each piece of equipment with their lines and with what the supply has at their boxes. */
export const equipmentCircuits = (
  branches: readonly EquipmentBranches[],
  lines: SupplyLines,
  boxes: readonly (BoxVolts | null)[],
): readonly EquipmentCircuits[] =>
  branches.map((one) => {
    const phases = phasesOf(one.chargers, lines);
    return completed(one, phases, ownBoxes(boxes, one.positions));
  });

const ownBoxes = picking<BoxVolts | null>();

const phasesOf = remembered((chargers: readonly Charger[], lines: SupplyLines): readonly PhasePair[] =>
  chargers.map(({ id }) => lines.chargers.get(id)!),
);

const completed = remembered(
  (
    branches: EquipmentBranches,
    phases: readonly PhasePair[],
    boxes: readonly (BoxVolts | null)[],
  ): EquipmentCircuits => {
    const circuits = branches.circuits.map((circuit, i) => {
      const box = boxes[i];
      return circuit === null || !box ? null : complete(circuit, phases[i]!, box);
    });
    return { branches, phases, circuits };
  },
);

const complete = remembered((circuit: BranchCircuit, phases: PhasePair, box: BoxVolts): Circuit => {
  const { way: _way, branch: _branch, ...own } = circuit;
  return { ...own, phases, totalDropPercent: box.totalDropPercent, voltsAtBox: box.volts };
});

/** All circuits in the order of the site's chargers. */
export function inChargerOrder(site: Site, all: readonly EquipmentCircuits[]): readonly Circuit[] {
  const places = new Array<Circuit | null>(site.chargers.length).fill(null);
  for (const { branches, circuits } of all)
    for (let i = 0; i < branches.positions.length; i++) places[branches.positions[i]!] = circuits[i]!;
  return places.filter((circuit) => circuit !== null);
}
