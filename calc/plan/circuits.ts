import { byId } from '../../routing/site/look-up.ts';
import type { Charger, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import { feedsOf } from '../branches/feeds.ts';
import type { BranchCircuit } from '../branches/named.ts';
import { remembered } from '../kept/memo.ts';
import { joining, splitting } from '../kept/partition.ts';
import type { Circuit, PhasePair } from '../plan-file.ts';
import type { BoxVolts } from '../supply/load-flow/box-volts.ts';
import { type BoxSupply, boxAt, newDesks } from '../supply/load-flow/boxes.ts';
import { keptDrop } from '../supply/load-flow/drop-percents.ts';
import { linesOf, type SupplyLines } from '../supply/tree/supply-lines.ts';

const ownBoxes = splitting<BoxVolts | null>();

/** Lines of the circuits of each piece of equipment, in the order of `feedsOf` and of its chargers. */
export const equipmentPhases = (site: Site): readonly (readonly PhasePair[])[] =>
  allPhases(feedsOf(site.chargers).chargers, linesOf(site));

const allPhases = remembered(
  (byEquipment: readonly (readonly Charger[])[], lines: SupplyLines): readonly (readonly PhasePair[])[] =>
    byEquipment.map((chargers) => phasesOf(chargers, lines)),
);

const phasesOf = remembered((chargers: readonly Charger[], lines: SupplyLines): readonly PhasePair[] =>
  chargers.map(({ id }) => lines.chargers.get(id)!),
);

/**
 * All circuits in the order of the site's chargers: the branches completed with their lines and with what the supply has
 * at their boxes.
 */
export function circuitsOf(
  site: Site,
  branches: readonly EquipmentBranches[],
  boxes: readonly (BoxVolts | null)[],
): readonly Circuit[] {
  const { partition } = feedsOf(site.chargers);
  const phases = equipmentPhases(site);
  const parts = ownBoxes(boxes, partition);
  const circuits = allCircuits(
    branches.map((one, i) => completed(one, phases[i]!, parts[i]!)),
    partition,
  );
  return isWhole(circuits) ? circuits : circuits.filter((circuit) => circuit !== null);
}

const allCircuits = joining<Circuit | null>();

const isWhole = (circuits: readonly (Circuit | null)[]): circuits is readonly Circuit[] => !circuits.includes(null);

/** What circuits were completed from. */
interface Completed {
  readonly branches: EquipmentBranches;
  readonly phases: readonly PhasePair[];
  readonly boxes: readonly (BoxVolts | null)[];
  readonly circuits: readonly (Circuit | null)[];
}

const latest = new WeakMap<readonly Charger[], Completed>();

/** The circuits of one piece of equipment; each is the same object as before where all that it is made of is. */
function completed(
  branches: EquipmentBranches,
  phases: readonly PhasePair[],
  boxes: readonly (BoxVolts | null)[],
): readonly (Circuit | null)[] {
  const last = latest.get(branches.chargers);
  if (last?.branches === branches && last.phases === phases && last.boxes === boxes) return last.circuits;
  const circuits = branches.circuits.map((circuit, i) => {
    const box = boxes[i];
    if (circuit === null || !box) return null;
    const same = circuit === last?.branches.circuits[i] && box === last.boxes[i] && phases[i] === last.phases[i];
    return same ? last.circuits[i]! : complete(circuit, phases[i]!, box);
  });
  latest.set(branches.chargers, { branches, phases, circuits, boxes });
  return circuits;
}

/** What a plan's circuits are put together from. */
export interface CircuitParts {
  readonly branches: readonly EquipmentBranches[];
  readonly phases: readonly (readonly PhasePair[])[];
  readonly boxSupply: BoxSupply;
}

const alone = new WeakMap<BranchCircuit, Circuit>();

/**
 * The circuit of one charger, as the list of all has it; undefined where it has none. For who follows one of many while
 * something is dragged: when a run comes or goes, the volts at every box are other ones, and the list costs them all.
 */
export function circuitOf({ branches, phases, boxSupply }: CircuitParts, charger: string): Circuit | undefined {
  const { chargers } = boxSupply.of;
  const own = byId(chargers).get(charger);
  if (own === undefined) return undefined;
  const place = chargers.indexOf(own);
  const { partition } = feedsOf(chargers);
  const [part, at] = [partition.partOf[place]!, partition.placeIn[place]!];
  const { circuits, ohms } = branches[part]!;
  const circuit = circuits[at] ?? null;
  if (circuit === null) return undefined;
  const box = boxAt(boxSupply, place, ohms[at]!);
  const lines = phases[part]![at]!;
  const last = alone.get(circuit);
  if (last?.phases === lines && sameBox(last, box)) return last;
  const made = complete(circuit, lines, box);
  alone.set(circuit, made);
  return made;
}

/**
 * The worst drop of the circuit of the charger at a place, percent, as its circuit has it; undefined where it has none. For
 * who asks many and needs no list of circuits.
 */
export function worstDrops({ branches, boxSupply }: CircuitParts): (place: number) => number | undefined {
  const { partition } = feedsOf(boxSupply.of.chargers);
  const desks = newDesks();
  return (place) => {
    const [part, at] = [partition.partOf[place]!, partition.placeIn[place]!];
    const { circuits, ohms } = branches[part]!;
    const [circuit, own] = [circuits[at] ?? null, ohms[at] ?? null];
    if (circuit === null || own === null) return undefined;
    const worst = keptDrop(boxSupply.of, boxSupply.state, place, own, desks);
    return Math.max(worst, circuit.branchDropPercent);
  };
}

const sameBox = (circuit: Circuit, box: BoxVolts): boolean =>
  circuit.voltsAtBox === box.volts &&
  circuit.totalDropPercent === box.totalDropPercent &&
  circuit.worstDropPercent === Math.max(box.worstDropPercent, circuit.branchDropPercent);

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
  worstDropPercent: Math.max(box.worstDropPercent, circuit.branchDropPercent),
  voltsAtBox: box.volts,
});
