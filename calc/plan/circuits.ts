import { kept } from '../../routing/kept/kept.ts';
import { keptEach } from '../../routing/kept/kept-list.ts';
import { joining } from '../../routing/kept/parts.ts';
import type { Charger, Site } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import { feedsOf } from '../branches/feeds.ts';
import type { BranchCircuit } from '../branches/named.ts';
import { ohmsByEquipment } from '../branches/ohms-of.ts';
import type { Circuit, PhasePair } from '../plan-file/branches.ts';
import { type BoxSupply, boxAt, dropPercents, placesOf } from '../supply/load-flow/box-voltages.ts';
import type { BoxVolts } from '../supply/load-flow/box-volts.ts';
import { linesOf, type SupplyLines } from '../supply/tree/supply-lines.ts';

/** Lines of the circuits of each piece of equipment, in the order of `feedsOf` and of its chargers. */
export const equipmentPhases = (site: Site): readonly (readonly PhasePair[])[] =>
  allPhases(feedsOf(site.chargers).chargers, linesOf(site));

const allPhases = kept(
  (byEquipment: readonly (readonly Charger[])[], lines: SupplyLines): readonly (readonly PhasePair[])[] =>
    byEquipment.map((chargers) => phasesOf(chargers, lines)),
);

const phasesOf = kept((chargers: readonly Charger[], lines: SupplyLines): readonly PhasePair[] =>
  chargers.map(({ id }) => lines.chargers.get(id)!),
);

/** What a plan's circuits are put together from. */
export interface CircuitParts {
  readonly branches: readonly EquipmentBranches[];
  readonly phases: readonly (readonly PhasePair[])[];
  readonly boxSupply: BoxSupply;
}

/** The branch of a charger completed with its lines and with what the supply has at its box. */
const circuitAt = (branch: BranchCircuit, lines: PhasePair, supply: BoxSupply, place: number): Circuit =>
  complete(branch, lines, boxAt(branch.branch.ohms, supply, place));

const allBranches = joining<BranchCircuit | null>();
const allLines = joining<PhasePair>();

/** All circuits in the order of the site's chargers. */
export function circuitsOf({ branches, phases, boxSupply }: CircuitParts): readonly Circuit[] {
  const { partition } = feedsOf(boxSupply.of.chargers);
  const ofBranches = allBranches(
    branches.map(({ circuits }) => circuits),
    partition,
  );
  const circuits = allCircuits([ofBranches, allLines(phases, partition), placesOf(boxSupply.of.chargers)], [boxSupply]);
  return isWhole(circuits) ? circuits : circuits.filter((circuit) => circuit !== null);
}

const allCircuits = keptEach(
  ([branch, lines, place]: readonly [BranchCircuit | null, PhasePair, number], [supply]: readonly [BoxSupply]) =>
    branch === null ? null : circuitAt(branch, lines, supply, place),
);

const isWhole = (circuits: readonly (Circuit | null)[]): circuits is readonly Circuit[] => !circuits.includes(null);

/**
 * The circuit of one charger, the same as in the list of all; undefined where it has none. For following one of many while
 * something is dragged: when a run comes or goes the volts at every box are other ones, and the list costs them all.
 */
export function circuitOf({ branches, phases, boxSupply }: CircuitParts, charger: string): Circuit | undefined {
  const { chargers } = boxSupply.of;
  const place = chargers.findIndex(({ id }) => id === charger);
  if (place < 0) return undefined;
  const { partOf, placeIn } = feedsOf(chargers).partition;
  const [part, at] = [partOf[place]!, placeIn[place]!];
  const branch = branches[part]!.circuits[at] ?? null;
  return branch === null ? undefined : circuitAt(branch, phases[part]![at]!, boxSupply, place);
}

/**
 * The worst drop of the circuit of the charger at a place, percent, as its circuit has it; undefined where it has none. For
 * who asks many and needs no list of circuits.
 */
export function worstDrops({ branches, boxSupply }: CircuitParts): (place: number) => number | undefined {
  const { partOf, placeIn, places } = feedsOf(boxSupply.of.chargers).partition;
  const percents = dropPercents(boxSupply, ohmsByEquipment(branches), places);
  return (place) => {
    const [part, at] = [partOf[place]!, placeIn[place]!];
    const circuit = branches[part]!.circuits[at] ?? null;
    return circuit === null ? undefined : Math.max(percents[part]![at]!, circuit.branchDropPercent);
  };
}

// Written out field by field: there are many, and a copy of all but two takes twenty times as long.
const complete = kept(
  (circuit: BranchCircuit, phases: PhasePair, box: BoxVolts): Circuit => ({
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
  }),
);
