import type { Run } from '../../../routing/network/run.ts';
import type { Charger, Load, Site } from '../../../routing/site/site.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import type { LineAmps, LineVolts, SupplyEquipment } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { citedShort } from '../../tables/sections.ts';
import { explained, type Step } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { bondedAt } from '../bonding/bonded.ts';
import { faultSteps } from '../fault/fault-steps.ts';
import { magnitudeAt } from '../load-flow/phasor.ts';
import { placesBeyond } from '../service/services.ts';
import type { SupplyWork } from '../supply.ts';
import { systemName } from '../tree/system.ts';
import { deviceOf, greatestLine, ratingOf } from './demand.ts';

/** How volts and amps everywhere are found at once. */
export const SWEEP =
  'the whole supply solved at once: amps from the volts, summed towards the source; volts from the amps, outwards; until no voltage changes by more than 1e-9 of nominal';
export const SWEEP_SOURCE =
  'backward and forward sweep, W. H. Kersting, Distribution System Modeling and Analysis (from memory)';

/** How what the plan says of a piece of equipment was found: load, volts, amps, demand, rating, fault current. */
export function equipmentSteps(
  site: Site,
  runs: readonly Run[],
  work: SupplyWork,
  row: SupplyEquipment,
  tables: CodeTables,
): readonly Step[] {
  const place = work.tree.placeOf.get(row.id)!;
  const beyond = placesBeyond(work.tree, place);
  const chargers = site.chargers.filter(
    (_, i) => beyond.has(work.seats.node[i]!) && (runs[i]?.length ?? null) !== null,
  );
  const loads = site.loads.filter(
    ({ from, generation }) => generation !== true && beyond.has(work.tree.placeOf.get(from) ?? -1),
  );
  return [
    connected(row, chargers, loads),
    ...share(site, work, row, place, tables),
    amps(row, work),
    volts(row, work, place),
    demand(work, place, tables),
    ...unitDemand(row, work, place, tables),
    ...rating(row, work, place, tables),
    ...faultSteps(work, place, site.rules, tables),
    ...explained((tell) => bondedAt(tables, work.tree, place, tell)).steps,
    ...highest(row, work, place),
  ];
}

const connected = (row: SupplyEquipment, chargers: readonly Charger[], loads: readonly Load[]): Step => ({
  find: 'connected load',
  formula: 'rated volt-amperes of the chargers with a run and of the loads, here and beyond; generation left out',
  values: { chargers: chargers.length, loads: measured(sum(loads.map(({ va }) => va)), 'VA') },
  result: row.connectedVa,
  unit: 'VA',
  source: 'ratings as entered',
});

/** What load management leaves, where it holds anything back. */
function share(site: Site, { tree }: SupplyWork, row: SupplyEquipment, place: number, tables: CodeTables): Step[] {
  const { managedAmps } = tree.nodes[place]!.equipment;
  if (managedAmps === undefined) return [];
  const own = site.chargers.filter(({ from }) => from === row.id).length;
  return [
    {
      find: 'share that load management leaves',
      formula:
        'one factor for all chargers, so that the greatest line current of theirs is the ceiling; 1 where it is less',
      values: { ceiling: measured(managedAmps, 'A'), 'chargers here': own },
      result: row.chargerShare,
      source: `load management as entered; ${citedShort(tables, 'loadManagement')} (from memory)`,
    },
  ];
}

const amps = (row: SupplyEquipment, { state }: SupplyWork): Step => ({
  find: 'amperes out, everything on',
  formula: SWEEP,
  values: { rounds: state.full.rounds },
  result: lineText(row.amps, 'A'),
  source: SWEEP_SOURCE,
});

function volts(row: SupplyEquipment, { tree, state }: SupplyWork, place: number): Step {
  const { system, parent } = tree.nodes[place]!;
  return {
    find: 'volts, everything on',
    formula: parent < 0 ? 'held at nominal: nothing feeds it' : SWEEP,
    values: { nominal: systemName(system), rounds: state.full.rounds },
    result: lineText(row.volts, 'V'),
    source: parent < 0 ? 'a convention of this planner' : SWEEP_SOURCE,
  };
}

function demand({ model, state }: SupplyWork, place: number, tables: CodeTables): Step {
  const bus = model.loadBus[place]!;
  const line = (i: number): string => measured(magnitudeAt(state.demand.out, 3 * bus + i), 'A');
  const percent = continuousPercent(tables);
  return {
    find: 'demand',
    formula: `greatest line current with every charger, load-managed ceiling and continuous load counted ${percent}, at nominal volts, as phasors`,
    values: { A: line(0), B: line(1), C: line(2) },
    result: greatestLine(state.demand.out, bus),
    unit: 'A',
    source: tables.continuous.source,
  };
}

/** The same with the least load of a charger, where that asks for more. */
function unitDemand(row: SupplyEquipment, { model, state }: SupplyWork, place: number, tables: CodeTables): Step[] {
  if (row.unitDemandAmps === undefined) return [];
  const bus = model.loadBus[place]!;
  const line = (i: number): string => measured(magnitudeAt(state.unitDemand.out, 3 * bus + i), 'A');
  const { unitLoadVa } = tables.vehicleSupply;
  return [
    {
      find: 'demand by least loads',
      formula: `as the demand, with no charger counted for less than ${unitLoadVa} VA and load-managed ceilings as they are`,
      values: { A: line(0), B: line(1), C: line(2) },
      result: row.unitDemandAmps,
      unit: 'A',
      source: citedShort(tables, 'chargerLoad', 'managedLoad'),
    },
  ];
}

function rating(row: SupplyEquipment, { tree }: SupplyWork, place: number, tables: CodeTables): Step[] {
  const rated = ratingOf(tree, place);
  if (rated === undefined || row.percentLoaded === undefined) return [];
  const device = deviceOf(tree, place);
  const { busAmps } = tree.nodes[place]!.equipment;
  return [
    {
      find: 'rating',
      formula: 'the least of its main, the breaker of its feeder where that stands ahead of it, and its busbar',
      values: {
        ...(device === undefined ? {} : { 'main or breaker': measured(device, 'A') }),
        ...(busAmps === undefined ? {} : { busbar: measured(busAmps, 'A') }),
      },
      result: rated,
      unit: 'A',
      source: `ratings as entered; ${citedShort(tables, 'panelDevice', 'feederDevice')} (from memory)`,
    },
    {
      find: 'loaded',
      formula: '100 x demand / rating',
      values: { demand: measured(row.demandAmps, 'A'), rating: measured(rated, 'A') },
      result: row.percentLoaded,
      unit: '%',
      source: 'definition',
    },
  ];
}

function highest(row: SupplyEquipment, { tree }: SupplyWork, place: number): Step[] {
  if (row.highestVolts === undefined) return [];
  return [
    {
      find: 'highest volts',
      formula: `generation alone, nothing drawn: ${SWEEP}; the highest of its pairs`,
      values: { nominal: measured(tree.nodes[place]!.system.volts, 'V') },
      result: row.highestVolts,
      unit: 'V',
      source: SWEEP_SOURCE,
    },
  ];
}

/** `AB 205.1, BC 205.4, CA 204.9 V`: lines that are not there left out. */
export function lineText(lines: LineVolts | LineAmps, unit: string): string {
  const there = Object.entries(lines).filter(([, value]) => value !== 0 || unit === 'A');
  return `${there.map(([line, value]) => `${line} ${(value as number).toFixed(1)}`).join(', ')} ${unit}`;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
