import type { Rules, Site } from '../../../routing/site/site.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import { unprotected } from '../../circuits/unprotected.ts';
import type { SupplyFeeder } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import { largestDeviceFor } from '../../tables/protection-of.ts';
import { cited } from '../../tables/sections.ts';
import { isConductorSize } from '../../tables/sizes.ts';
import { explained, type Step } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { groundWire } from '../bonding/ground-wire.ts';
import { devicesOf } from '../devices/devices.ts';
import { unprotectedFeeder } from '../devices/unprotected-feeder.ts';
import { ohmText } from '../fault/fault-steps.ts';
import { voltsAt } from '../load-flow/supply-report.ts';
import { greatestLine } from '../panels/demand.ts';
import { lineText, SWEEP, SWEEP_SOURCE } from '../panels/equipment-steps.ts';
import type { SupplyWork } from '../supply.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import type { SupplyNode } from '../tree/supply-tree.ts';
import { feederAmpacity } from './feeder-ampacity.ts';
import { feederAmbient, feederAmbients } from './feeder-ways.ts';

/** How what the plan says of a feeder was found: ohms, amps, drop, loss, demand, and what its conductors carry. */
export function feederSteps(work: SupplyWork, row: SupplyFeeder, site: Site, tables: CodeTables): readonly Step[] {
  const { rules } = site;
  const place = work.tree.nodes.findIndex(({ feeder }) => feeder?.id === row.id);
  const node = work.tree.nodes[place]!;
  return [
    ...ohms(work, row, node, place, tables),
    {
      find: 'amperes, everything on',
      formula: SWEEP,
      values: { rounds: work.state.full.rounds },
      result: lineText(row.amps, 'A'),
      source: SWEEP_SOURCE,
    },
    drop(work, row, node, place),
    loss(work, row, place),
    {
      find: 'loaded',
      formula: `100 x demand / breaker; demand is the greatest line current with continuous load counted ${continuousPercent(tables)}`,
      values: { demand: measured(row.demandAmps, 'A'), breaker: measured(row.breakerAmps, 'A') },
      result: row.percentLoaded,
      unit: '%',
      source: tables.continuous.source,
    },
    ...carried(work, node, place, rules, tables),
    ...startedBare(work, place, site, tables),
  ];
}

function ohms(
  { ways, model }: SupplyWork,
  row: SupplyFeeder,
  { feeder }: SupplyNode,
  place: number,
  tables: CodeTables,
): Step[] {
  const z = model.feederOhms[place] ?? null;
  if (feeder === null || z === null) return [];
  const { size, metal, sets } = feeder.conductor;
  const raceway = ways.kinds[place] ?? 'PVC';
  const table = findImpedance(tables, size, metal, raceway)!;
  return [
    {
      find: 'ohms of one line',
      formula: '(R + j X of Table 9 per 1,000 ft) x length / 1,000 / sets',
      values: {
        conductor: `${size} ${metal} in ${raceway}`,
        R: measured(table.r, 'ohm/1,000 ft'),
        X: measured(table.x, 'ohm/1,000 ft'),
        length: measured(row.length, 'ft'),
        sets,
      },
      result: ohmText(z),
      source: tables.impedances.source,
    },
  ];
}

function drop({ tree, lines, model, state }: SupplyWork, row: SupplyFeeder, node: SupplyNode, place: number): Step {
  const above = tree.nodes[node.parent]!;
  const incoming = lines.equipment.get(node.equipment.id) ?? 'ABC';
  const at = (bus: number): string => lineText(pairsOnly(voltsAt(state.full.volts, bus, above.system, incoming)), 'V');
  return {
    find: 'drop',
    formula: '100 x the greatest difference of volts across a pair of lines / nominal volts',
    values: {
      'at its head': at(model.loadBus[node.parent]!),
      'at its far end': at(model.feedBus[place]!),
      nominal: measured(above.system.volts, 'V'),
    },
    result: row.dropPercent,
    unit: '%',
    source: SWEEP_SOURCE,
  };
}

const pairsOnly = ({ AB, BC, CA }: { AB: number; BC: number; CA: number }) => ({ AB, BC, CA });

function loss({ model }: SupplyWork, row: SupplyFeeder, place: number): Step {
  return {
    find: 'loss',
    formula: 'ohms of one line x sum of the squares of its amperes, the neutral among them',
    values: { R: measured(model.feederOhms[place]?.re ?? 0, 'ohm'), amperes: lineText(row.amps, 'A') },
    result: row.lossWatts,
    unit: 'W',
    source: 'definition',
  };
}

/** What its conductors carry where they lie, against 125% and against the load itself, and the grounding conductor beside. */
function carried(
  { tree, ways, state, model }: SupplyWork,
  node: SupplyNode,
  place: number,
  rules: Rules,
  tables: CodeTables,
): readonly Step[] {
  const { feeder } = node;
  if (feeder === null || !isConductorSize(feeder.conductor.size)) return [];
  if (feederIsOver(tables, node)) return [refused(node, tables)];
  const { steps } = explained((tell) => {
    const ambientC = feederAmbient(tables, rules, feeder, ways.along[place]!, tell);
    const amps = feederAmpacity(tables, feeder.conductor, ambientC, rules.terminalC, tell);
    if (amps === null) return;
    const bus = model.feedBus[place]!;
    tell(() => ({
      find: 'conductors for the load',
      formula: `at the terminals before correction at least the demand, continuous load counted ${continuousPercent(tables)}; after correction at least the load itself; the breaker at most the next standard rating above that`,
      values: {
        'at the terminals': measured(amps.atTerminals, 'A'),
        demand: measured(greatestLine(state.demand.into, bus), 'A'),
        'after correction': measured(amps.ampacity, 'A'),
        load: measured(greatestLine(state.load.into, bus), 'A'),
      },
      result: measured(largestDeviceFor(tables, amps.ampacity), 'A at most'),
      source: cited(tables, 'feederConductor', 'nextRatings'),
    }));
    groundWire(tables, tree.nodes, place, rules.terminalC, ambientC, tell);
  });
  return steps;
}

/** Of conductors without a device where they start: the rule that lets them, condition by condition. */
function startedBare({ tree, ways }: SupplyWork, place: number, site: Site, tables: CodeTables): readonly Step[] {
  const ambients = feederAmbients(tables, site.rules, ways, tree);
  const bare = unprotectedFeeder(tables, site.rules, tree, devicesOf(site, tables), { ...ways, ambients }, place);
  return bare === null ? [] : explained((tell) => unprotected(tables, bare, tell)).steps;
}

/** In the place of what the tables of low voltage would say. */
const refused = ({ primary, system }: SupplyNode, { lowVoltage }: CodeTables): Step => ({
  find: 'conductors, device and grounding conductor',
  formula: `not worked: the tables end at ${lowVoltage.upToVolts} V`,
  values: { volts: measured((primary ?? system).volts, 'V') },
  result: 'as designed for that voltage by others',
  source: `${lowVoltage.source} (from memory)`,
});
