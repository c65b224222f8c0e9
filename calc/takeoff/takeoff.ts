import { guarded } from '../../routing/checks/access/guard-findings.ts';
import { kept } from '../../routing/kept/kept.ts';
import { keptEach } from '../../routing/kept/kept-list.ts';
import { chunking } from '../../routing/kept/parts.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Charger, Drop, Equipment, Feeder, Pullpoint, Rules, Site, Stall } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { NamedHomeRun } from '../branches/named.ts';
import { branchBreaker } from '../circuits/branch.ts';
import type { Handhole, PhasePair, PlannedBox } from '../plan-file/branches.ts';
import type { TakeoffRow } from '../plan-file/takeoff.ts';
import type { RacewaySupports } from '../steel/raceway-supports.ts';
import { bondedOf } from '../supply/bonding/bonded.ts';
import { equipmentDevices, loadDevicesOf } from '../supply/devices/devices.ts';
import type { FeederConduit } from '../supply/feeders/feeder-conduit.ts';
import { disconnectNeeds } from '../supply/panels/charger-disconnects.ts';
import { treeOf } from '../supply/tree/supply-lines.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { buriedConduits } from './conduits/buried-conduits.ts';
import { feederDrills, groundQuantities } from './conduits/ground-quantities.ts';
import { addRaceways } from './conduits/raceway-quantities.ts';
import { stringerQuantities, supportQuantities } from './conduits/support-quantities.ts';
import { feederQuantities } from './feeders/feeder-quantities.ts';
import type { WorkHeight } from './high.ts';
import { bondingQuantities } from './quantities/bonding-quantities.ts';
import {
  boxQuantities,
  handholeQuantities,
  idleDropQuantities,
  idlePullpointQuantities,
} from './quantities/box-quantities.ts';
import { boxlessDrops } from './quantities/boxless-drops.ts';
import { addConductors } from './quantities/conductor-quantities.ts';
import { chargerBreaker, deviceQuantities } from './quantities/device-quantities.ts';
import { disconnectQuantities } from './quantities/disconnect-quantities.ts';
import { dropQuantities } from './quantities/drop-quantities.ts';
import { equipmentQuantities } from './quantities/equipment-quantities.ts';
import { guardQuantities } from './quantities/guard-quantities.ts';
import { overLimitTally } from './quantities/over-limit-quantities.ts';
import { stallQuantities, stallsServedBy } from './quantities/stall-quantities.ts';
import { takeoffRows } from './rows.ts';
import { addedUp, type Tally, tallying } from './tally.ts';

/** Boxes beside those that equipment has of its own. */
export interface OtherBoxes {
  /** Those that several pieces of equipment may come to. */
  readonly shared: readonly PlannedBox[];
  /** At the pull points that only feeders pass. */
  readonly onFeeders: readonly PlannedBox[];
  /** All boxes in the ground. */
  readonly handholes: readonly Handhole[];
}

/**
 * Quantities of everything that the site's branches, drops, equipment, ground and new feeders need. Conductor and raceway
 * lengths include the waste of the rules; every row says what it counts and opens into the elements it is made of.
 */
export function takeoff(
  site: Site,
  tables: CodeTables,
  branches: readonly EquipmentBranches[],
  phases: readonly (readonly PhasePair[])[],
  { shared, onFeeders, handholes }: OtherBoxes,
  feeders: readonly FeederConduit[],
  supports: readonly RacewaySupports[],
): readonly TakeoffRow[] {
  const { rules, units } = site;
  const { workHeight } = rules;
  const chargersAt = chargersByDrop(site.chargers);
  const chunks = dropChunks(site.drops);
  const guards = guarded(site);
  const pedestals = pedestalsAmong(
    site.chargers,
    chunks.map((chunk) => pedestalsOf(chunk)).filter(({ length }) => length > 0),
  );
  const tallies = [
    equipmentTally(site.equipment),
    devicesTally(equipmentDevices(site), tables),
    devicesTally(loadDevicesOf(site, tables), tables),
    overLimitTally(site, tables),
    feedersTally(site.feeders, feeders, site.pullpoints, site.equipment, tables, rules),
    disconnectsTally(disconnectNeeds(site.chargers, treeOf(site), tables)),
    bondingTally(bondedOf(treeOf(site), tables), site.feeders, rules, tables),
    idleDropsTally(site.chargers, boxlessDrops(branches), pedestals),
    idlePullsTally(site.pullpoints, [...shared, ...onFeeders], workHeight),
    sharedBoxesTally(site.pullpoints, aboveGrade(onFeeders), pedestals, tables, workHeight),
    sharedBoxesTally(site.pullpoints, shared, pedestals, tables, workHeight),
    handholesTally(handholes, tables.sections),
    groundTally(site.raceways, buriedConduits(site.raceways, branches, feeders)),
    drillsTally(feeders, site.raceways),
    ...branchTallies([branches, phases], [tables, rules, pedestals]),
    ...supportChunks(supports).map((chunk) => supportQuantities(chunk, workHeight)),
    stringerQuantities(site.members, workHeight),
    ...stallChunks(site.stalls).map((chunk) => stallsTally(chunk, servedFrom(site.chargers, pedestals))),
    ...chunks.map((chunk) => dropsTally(chunk, chargersAt, units, workHeight)),
    guardQuantities(guards.pedestals, guards.bollards),
  ];
  return takeoffRows([...totalOf(tallies).values()], rules);
}

/** Tallies added up in a tree of sums, so that one of them changes only the sums above it. */
function totalOf(tallies: readonly Tally[]): Tally {
  if (tallies.length === 1) return tallies[0]!;
  return totalOf(tallyChunks(tallies).map((chunk) => chunkTally(chunk)));
}

const equipmentTally = kept(equipmentQuantities);
const feedersTally = kept(
  (
    _feeders: readonly Feeder[],
    conduits: readonly FeederConduit[],
    pullpoints: readonly Pullpoint[],
    equipment: readonly Equipment[],
    tables: CodeTables,
    rules: Rules,
  ): Tally => feederQuantities(conduits, pullpoints, equipment, tables, rules),
);
const aboveGrade = kept((boxes: readonly PlannedBox[]): readonly PlannedBox[] =>
  boxes.filter(({ under }) => under === null),
);
const bondingTally = kept(bondingQuantities);
const devicesTally = kept(deviceQuantities);
const disconnectsTally = kept(disconnectQuantities);
const idleDropsTally = kept(
  (_chargers: readonly Charger[], drops: readonly string[], pedestals: ReadonlySet<string>): Tally =>
    idleDropQuantities(drops, pedestals),
);
const idlePullsTally = kept(idlePullpointQuantities);
const sharedBoxesTally = kept(
  (
    _pullpoints: readonly Pullpoint[],
    boxes: readonly PlannedBox[],
    pedestals: ReadonlySet<string>,
    { sections }: CodeTables,
    heights: WorkHeight,
  ): Tally => boxQuantities(boxes, pedestals, sections, heights),
);
const handholesTally = kept(handholeQuantities);
const groundTally = kept(groundQuantities);
const servedFrom = kept((chargers: readonly Charger[], pedestals: ReadonlySet<string>) =>
  stallsServedBy(chargers, pedestals),
);
const stallChunks = chunking<Stall>(512);
const stallsTally = kept(stallQuantities);
const drillsTally = kept(feederDrills);

const dropChunks = chunking<Drop>(128);
const supportChunks = chunking<RacewaySupports>(32);
const tallyChunks = chunking<Tally>(16);
const chunkTally = kept(addedUp);

const NO_PEDESTALS: readonly string[] = [];
const NOT_ONE: ReadonlySet<string> = new Set();

/** The drops of a chunk that are pedestals. */
const pedestalsOf = kept((chunk: readonly Drop[]): readonly string[] => {
  const ids = chunk.flatMap(({ id, mount }) => (mount === 'pedestal' ? [id] : []));
  return ids.length === 0 ? NO_PEDESTALS : ids;
});

/** Those of all chunks: the same set as long as they are the same. */
const pedestalsAmong = (chargers: readonly Charger[], chunks: readonly (readonly string[])[]): ReadonlySet<string> =>
  chunks.length === 0 ? NOT_ONE : idsIn(chargers, chunks.flat());

const idsIn = kept((_: readonly Charger[], ids: readonly string[]): ReadonlySet<string> => new Set(ids));

const dropsTally = kept(
  (
    chunk: readonly Drop[],
    chargersAt: ReadonlyMap<string, readonly Charger[]>,
    units: Units,
    heights: WorkHeight,
  ): Tally => dropQuantities(chunk, chargersAt, (feet) => printLength(feet, units), heights),
);

const chargersByDrop = kept((chargers: readonly Charger[]): ReadonlyMap<string, readonly Charger[]> => {
  const at = new Map<string, Charger[]>();
  for (const charger of chargers) {
    addTo(at, charger.drop, charger);
  }
  return at;
});

const branchTallies = keptEach(
  (
    [branches, phases]: readonly [EquipmentBranches, readonly PhasePair[]],
    [tables, rules, pedestals]: readonly [CodeTables, Rules, ReadonlySet<string>],
  ) => branchesTally(branches, phases, tables, rules, pedestals),
);

const branchesTally = kept(
  (
    branches: EquipmentBranches,
    phases: readonly PhasePair[],
    tables: CodeTables,
    rules: Rules,
    pedestals: ReadonlySet<string>,
  ): Tally => {
    const byCharger = new Map<string, PhasePair>();
    branches.circuits.forEach((circuit, i) => {
      if (circuit !== null) byCharger.set(circuit.charger, phases[i]!);
    });
    const homeRuns = branches.homeRuns.map((homeRun) =>
      homeRunTally(
        homeRun,
        homeRun.circuits.map(({ charger }) => byCharger.get(charger)!),
        tables,
        rules,
      ),
    );
    return addedUp([
      ...homeRuns,
      idleBreakers(branches, phases, tables),
      boxQuantities(branches.boxes, pedestals, tables.sections, rules.workHeight),
    ]);
  },
);

/** Breakers of chargers without a run: they stand in the panel all the same. */
function idleBreakers(
  { circuits, chargers }: EquipmentBranches,
  phases: readonly PhasePair[],
  tables: CodeTables,
): Tally {
  const { add, tally } = tallying();
  chargers.forEach(({ id, amps }, i) => {
    const rating = circuits[i] === null ? branchBreaker(tables, amps, true) : Infinity;
    if (Number.isFinite(rating)) add(chargerBreaker(tables, phases[i]!.length, rating), id, 1);
  });
  return tally;
}

const homeRunTally = kept(
  (homeRun: NamedHomeRun, phases: readonly PhasePair[], tables: CodeTables, rules: Rules): Tally => {
    const { add, tally } = tallying();
    addConductors(tables, rules, homeRun, phases, add);
    addRaceways(tables, rules, homeRun, add);
    return tally;
  },
);
