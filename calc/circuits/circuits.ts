import type { Charger, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../conduits/equipment-branches.ts';
import { feedsOf } from '../conduits/feeds.ts';
import type { BranchCircuit } from '../conduits/named.ts';
import { remembered } from '../memo.ts';
import { joining, partwise, splitting } from '../partition.ts';
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

const allOhms = joining<BranchOhms | null>();

/** Ohms of one line of each charger's branch, in the order of the site's chargers; null where it has none. */
export const ohmsOf = (site: Site, branches: readonly EquipmentBranches[]): readonly (BranchOhms | null)[] =>
  allOhms(
    branches.map(({ ohms }) => ohms),
    feedsOf(site.chargers).partition,
  );

const ownBoxes = splitting<BoxVolts | null>();

/** Completes the branches of each piece of equipment with their lines and with what the supply has at their boxes. */
export function equipmentCircuits(
  site: Site,
  branches: readonly EquipmentBranches[],
  lines: SupplyLines,
  boxes: readonly (BoxVolts | null)[],
): readonly EquipmentCircuits[] {
  const feeds = feedsOf(site.chargers);
  const parts = ownBoxes(boxes, feeds.partition);
  return byEquipment(feeds, [branches, parts], [lines], (i) => {
    const one = branches[i]!;
    return completed(one, phasesOf(one.chargers, lines), parts[i]!);
  });
}

const byEquipment = partwise<EquipmentCircuits>();

const phasesOf = remembered((chargers: readonly Charger[], lines: SupplyLines): readonly PhasePair[] =>
  chargers.map(({ id }) => lines.chargers.get(id)!),
);

/** What circuits were completed from. */
interface Completed extends EquipmentCircuits {
  readonly boxes: readonly (BoxVolts | null)[];
}

const latest = new WeakMap<readonly Charger[], Completed>();

/** The circuits of one piece of equipment; each is the same object as before where all that it is made of is. */
function completed(
  branches: EquipmentBranches,
  phases: readonly PhasePair[],
  boxes: readonly (BoxVolts | null)[],
): EquipmentCircuits {
  const last = latest.get(branches.chargers);
  const circuits = branches.circuits.map((circuit, i) => {
    const box = boxes[i];
    if (circuit === null || !box) return null;
    const same = circuit === last?.branches.circuits[i] && box === last.boxes[i] && phases[i] === last.phases[i];
    return same ? last.circuits[i]! : complete(circuit, phases[i]!, box);
  });
  const now = { branches, phases, circuits, boxes };
  latest.set(branches.chargers, now);
  return now;
}

// Written out field by field: there are many, and a copy of all but two takes twenty times as long.
const complete = (circuit: BranchCircuit, phases: PhasePair, box: BoxVolts): Circuit => ({
  charger: circuit.charger,
  from: circuit.from,
  breakerAmps: circuit.breakerAmps,
  conductor: circuit.conductor,
  grounding: circuit.grounding,
  pilot: circuit.pilot,
  currentCarrying: circuit.currentCarrying,
  ambientC: circuit.ambientC,
  factors: circuit.factors,
  ampacity: circuit.ampacity,
  sizedBy: circuit.sizedBy,
  branchDropPercent: circuit.branchDropPercent,
  conduits: circuit.conduits,
  phases,
  totalDropPercent: box.totalDropPercent,
  voltsAtBox: box.volts,
});

const allCircuits = joining<Circuit | null>();

/** All circuits in the order of the site's chargers. */
export function inChargerOrder(site: Site, all: readonly EquipmentCircuits[]): readonly Circuit[] {
  const circuits = allCircuits(
    all.map((one) => one.circuits),
    feedsOf(site.chargers).partition,
  );
  return isWhole(circuits) ? circuits : circuits.filter((circuit) => circuit !== null);
}

const isWhole = (circuits: readonly (Circuit | null)[]): circuits is readonly Circuit[] => !circuits.includes(null);
