import { kept } from '../../routing/kept/kept.ts';
import type { Run } from '../../routing/network/run.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Charger, Issued, Load, Rules, Site } from '../../routing/site/site.ts';
import type { BranchOhms } from '../branches/equipment-branches.ts';
import type { LoadCalculation } from '../plan-file/loads.ts';
import type { Device, Supply } from '../plan-file/supply.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { bondedOf } from './bonding/bonded.ts';
import { groundWire } from './bonding/ground-wire.ts';
import { equipmentDevices } from './devices/devices.ts';
import type { FeederLies } from './devices/unprotected-feeder.ts';
import { faultsOf, type NodeFault } from './fault/fault.ts';
import { withMotors } from './fault/motor-fault.ts';
import { type FeederWays, feederAmbients, feederWays } from './feeders/feeder-ways.ts';
import { type BoxSupply, boxSupplyOf, boxVoltages } from './load-flow/box-voltages.ts';
import type { BoxVolts } from './load-flow/box-volts.ts';
import { chargerSums } from './load-flow/charger-sums.ts';
import { type Seats, seatsOf } from './load-flow/seats.ts';
import { type SupplyModel, supplyModel } from './load-flow/supply-model.ts';
import { reportOf } from './load-flow/supply-report.ts';
import { type SupplyState, supplyState } from './load-flow/supply-solve.ts';
import { demandsOf } from './panels/demand.ts';
import { type PanelSchedule, panelSchedules } from './panels/panel-schedule.ts';
import { siteLoads } from './service/site-loads.ts';
import type { SupplyFacts } from './supply-facts.ts';
import { linesOf, type SupplyLines, treeOf } from './tree/supply-lines.ts';
import type { SupplyTree } from './tree/supply-tree.ts';

/** A supply worked through. What no other stage of a plan reads of it is worked out when somebody asks for it. */
export interface SupplyResult {
  readonly supply: Supply;
  /** The load of each service. */
  readonly loads: readonly LoadCalculation[];
  /** What the volts at the boxes are worked from. */
  readonly boxSupply: BoxSupply;
  /** What the checks of a supply are made on. */
  readonly facts: SupplyFacts;
  /** Of the tree that the feeders make, and of the ways they lie along. */
  readonly findings: readonly Finding[];
}

/** A supply worked through: what its report, its findings and its steps are written from. */
export interface SupplyWork {
  readonly tree: SupplyTree;
  readonly lines: SupplyLines;
  readonly ways: FeederWays;
  readonly model: SupplyModel;
  readonly seats: Seats;
  readonly state: SupplyState;
  /** Of the feeder into each node, °C, where it is hottest. */
  readonly ambients: readonly number[];
  readonly faults: readonly (NodeFault | null)[];
}

/** Works a supply through: its tree, its volts, what each piece of equipment and each feeder carries. */
export function supplyWork(site: Site, runs: readonly Run[], tables: CodeTables): SupplyWork {
  const { loads, chargers, rules } = site;
  const tree = treeOf(site);
  const lines = linesOf(site);
  const ways = feederWays(site, tree);
  const model = supplyModel(tree, lines, ways.lengths, ways.kinds, tables);
  const seats = seatsOf(tree, model, lines, chargers);
  const sums = chargerSums(tree, model, seats, chargers, runs, tables.vehicleSupply.unitLoadVa);
  const state = supplyState(sums, tree, model, lines, loads, rules.powerFactor, tables);
  const ambients = feederAmbients(tables, rules, ways, tree);
  const { fault, terminalC } = rules;
  const alone = faultsOf(tree, model, ways.lengths, ways.kinds, ambients, fault, terminalC, tables);
  const faults = withMotors(alone, tree, loads, fault.motorTimes);
  return { tree, lines, ways, model, seats, state, ambients, faults };
}

/**
 * The supply of a site with every charger that has a run on at its rated amperes, or at what load management leaves:
 * volts, amps, demand and losses from the sources out.
 */
export function supplyIn(site: Site, runs: readonly Run[], tables: CodeTables): SupplyResult {
  const { chargers, rules } = site;
  const work = supplyWork(site, runs, tables);
  const { tree, lines, ways, model, seats, state, ambients, faults } = work;
  const lies = liesOf(tree, ways.lengths, ways.outdoors, ways.levels, ambients);
  const schedules = panelSchedules(site);
  const facts = factsOf(
    state,
    tree,
    model,
    lines,
    lies,
    faults,
    equipmentDevices(site),
    site.loads,
    chargers,
    rules,
    site.units,
    schedules,
    site.issued,
    tables,
  );
  const loads = kept(() => siteLoads(site, runs, work, tables));
  const boxSupply = boxSupplyOf(state, seats, chargers, model.buses, rules.powerFactor);
  return {
    get supply() {
      return reported(facts, ways.lengths);
    },
    get loads() {
      return loads();
    },
    boxSupply,
    facts,
    findings: [...ways.findings, ...tree.findings],
  };
}

/**
 * The same with the volts at each box, in the order of the chargers; null where one has no branch.
 * @param ohms of one line of each charger's branch, end to end, in the order of the chargers; null where it has none
 */
export function supplyOf(
  site: Site,
  runs: readonly Run[],
  ohms: readonly (BranchOhms | null)[],
  tables: CodeTables,
): SupplyResult & { readonly boxes: readonly (BoxVolts | null)[] } {
  const supply = supplyIn(site, runs, tables);
  return { ...supply, boxes: boxVoltages(supply.boxSupply, ohms) };
}

const liesOf = kept(
  (
    _tree: SupplyTree,
    lengths: readonly (number | null)[],
    outdoors: readonly boolean[],
    levels: readonly (number | null)[],
    ambients: readonly number[],
  ): FeederLies => ({ lengths, outdoors, levels, ambients }),
);

const factsOf = kept(
  (
    state: SupplyState,
    tree: SupplyTree,
    model: SupplyModel,
    lines: SupplyLines,
    lies: FeederLies,
    faults: readonly (NodeFault | null)[],
    devices: readonly Device[],
    loads: readonly Load[],
    chargers: readonly Charger[],
    rules: Rules,
    units: Units,
    schedules: ReadonlyMap<string, PanelSchedule>,
    issued: Issued,
    tables: CodeTables,
  ): SupplyFacts => ({
    tree,
    model,
    lines,
    state,
    demands: demandsOf(tree, model, state, loads),
    lies,
    devices,
    faults,
    loads,
    chargers,
    rules,
    units,
    schedules,
    issued,
    tables,
  }),
);

/** The supply in figures: what depends on its state and not on any single box. */
const reported = kept((facts: SupplyFacts, lengths: readonly (number | null)[]): Supply => {
  const { tree, model, lines, demands, faults, lies, loads, rules, schedules, state, tables } = facts;
  const report = {
    tree,
    model,
    lines,
    lengths,
    demands,
    faults,
    idle: state.idle,
    spareSpaces: tree.nodes.map(({ equipment: { id, spaces } }) =>
      spaces === undefined ? undefined : spaces - (schedules.get(id)?.poles ?? 0),
    ),
    bonded: bondedOf(tree, tables),
    wires: tree.nodes.map((_, place) => groundWire(tables, tree.nodes, place, rules.terminalC, lies.ambients[place]!)),
    loads: loads.map(({ id }) => ({ id, lines: lines.loads.get(id)! })),
  };
  const full = reportOf(report, state.full);
  return state.withoutGeneration === null
    ? full
    : { ...full, withoutGeneration: reportOf(report, state.withoutGeneration) };
});
