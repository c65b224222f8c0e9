import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import type {
  Bonded,
  LineAmps,
  LineVolts,
  Supply,
  SupplyEquipment,
  SupplyFeeder,
  SupplyTransformer,
} from '../../plan-file/supply.ts';
import type { GroundWire } from '../bonding/ground-wire.ts';
import type { NodeFault } from '../fault/fault.ts';
import { type Demand, greatestLine, ratingOf } from '../panels/demand.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { type System, toNeutral } from '../tree/system.ts';
import { magnitude, magnitudeAt, minus, type Phasor, phasorAt, plus } from './phasor.ts';
import type { SupplyModel } from './supply-model.ts';
import type { Solved } from './sweep.ts';

/** Everything that one report of a supply is written from. */
export interface ReportCase {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly lines: SupplyLines;
  readonly lengths: readonly (number | null)[];
  readonly demands: readonly Demand[];
  readonly faults: readonly (NodeFault | null)[];
  readonly bonded: readonly Bonded[];
  /** Beside the feeder into each node. */
  readonly wires: readonly (GroundWire | null)[];
  /** Generation with nothing drawn; null where there is none. */
  readonly idle: Solved | null;
  readonly spareSpaces: readonly (number | undefined)[];
  /** Loads in the order of the file. */
  readonly loads: readonly { readonly id: string; readonly lines: Lines }[];
}

/** The supply as the plan gives it, from solved phasors: magnitudes only. */
export function reportOf(of: ReportCase, solved: Solved): Omit<Supply, 'withoutGeneration'> {
  const { nodes } = of.tree;
  return {
    equipment: nodes.map((node, place) => equipmentRow(of, solved, node, place)),
    feeders: nodes.flatMap((node, place) => (node.feeder === null ? [] : [feederRow(of, solved, node, place)])),
    transformers: nodes.flatMap((node, place) =>
      node.primary === null ? [] : [transformerRow(of, solved, node, place)],
    ),
    loads: of.loads,
    bonded: of.bonded,
  };
}

/** Lines of the side that the loads hang on. */
export const linesOn = (of: Pick<ReportCase, 'lines'>, node: SupplyNode): PhasePair =>
  node.system.phases === 3 ? 'ABC' : node.primary !== null ? 'AB' : (of.lines.equipment.get(node.equipment.id) ?? 'AB');

function equipmentRow(of: ReportCase, solved: Solved, node: SupplyNode, place: number): SupplyEquipment {
  const { equipment, system } = node;
  const bus = of.model.loadBus[place]!;
  const demand = of.demands[place]!;
  const rating = ratingOf(of.tree, place);
  const breakerAmps = equipment.mainAmps ?? (node.primary === null ? node.feeder?.breakerAmps : undefined);
  const balance = of.lines.balance.get(equipment.id);
  const fault = of.faults[place]?.amps ?? null;
  return {
    id: equipment.id,
    volts: voltsAt(solved.volts, bus, system, linesOn(of, node)),
    amps: ampsAt(solved.out, bus, system),
    connectedVa: demand.connectedVa,
    demandAmps: demand.amps,
    ...(demand.unitAmps > demand.amps * (1 + 1e-9) ? { unitDemandAmps: demand.unitAmps } : {}),
    ...(breakerAmps === undefined ? {} : { breakerAmps }),
    ...(rating === undefined ? {} : { percentLoaded: (100 * demand.amps) / rating, spareAmps: rating - demand.amps }),
    ...(of.spareSpaces[place] === undefined ? {} : { spareSpaces: of.spareSpaces[place] }),
    ...(fault === null ? {} : { faultAmps: fault.most, fault }),
    ...(of.idle === null ? {} : { highestVolts: highest(voltsAt(of.idle.volts, bus, system, linesOn(of, node))) }),
    ...(balance === undefined ? {} : { balance }),
    chargerShare: solved.share[bus]!,
  };
}

const highest = ({ AB, BC, CA }: LineVolts): number => Math.max(AB, BC, CA);

function feederRow(of: ReportCase, solved: Solved, node: SupplyNode, place: number): SupplyFeeder {
  const feeder = node.feeder!;
  const wire = of.wires[place] ?? null;
  const bus = of.model.feedBus[place]!;
  const above = of.tree.nodes[node.parent]!;
  const ohms = of.model.feederOhms[place]?.re ?? 0;
  const neutral = above.system.neutral === null ? 0 : magnitude(neutralAt(solved.into, bus));
  const squares = [0, 1, 2].reduce((sum, line) => sum + magnitudeAt(solved.into, 3 * bus + line) ** 2, neutral ** 2);
  const incoming = of.lines.equipment.get(node.equipment.id) ?? 'ABC';
  const from = voltsAt(solved.volts, of.model.loadBus[node.parent]!, above.system, incoming);
  const to = voltsAt(solved.volts, bus, above.system, incoming);
  const drop = Math.max(...pairsOf(incoming).map((pair) => from[pair] - to[pair]));
  return {
    id: feeder.id,
    length: of.lengths[place] ?? 0,
    amps: ampsAt(solved.into, bus, above.system),
    dropPercent: (100 * drop) / above.system.volts,
    lossWatts: ohms * squares,
    breakerAmps: feeder.breakerAmps,
    demandAmps: of.demands[place]!.feederAmps,
    ...(wire === null ? {} : { ground: wire }),
    percentLoaded: (100 * of.demands[place]!.feederAmps) / feeder.breakerAmps,
  };
}

function transformerRow(of: ReportCase, solved: Solved, node: SupplyNode, place: number): SupplyTransformer {
  const bus = of.model.loadBus[place]!;
  const { equipment, system } = node;
  let watts = 0;
  let vars = 0;
  for (let line = 0; line < 3; line++) {
    const v = phasorAt(solved.volts, 3 * bus + line);
    const i = phasorAt(solved.out, 3 * bus + line);
    watts += v.re * i.re + v.im * i.im;
    vars += v.im * i.re - v.re * i.im;
  }
  const loadKva = Math.hypot(watts, vars) / 1000;
  const kva = equipment.kva ?? 0;
  const rated = (kva * 1000) / (system.phases === 3 ? 3 * toNeutral(system) : system.volts);
  const squares = [0, 1, 2].reduce((sum, line) => sum + magnitudeAt(solved.out, 3 * bus + line) ** 2, 0);
  return {
    id: equipment.id,
    kva,
    loadKva,
    percentLoaded: kva === 0 ? 0 : (100 * loadKva) / kva,
    worstLinePercent: kva === 0 ? 0 : (100 * greatestLine(solved.out, bus)) / rated,
    lossWatts: (of.model.windingOhms[place]?.re ?? 0) * squares,
  };
}

const pairsOf = (lines: PhasePair): readonly ('AB' | 'BC' | 'CA')[] => (lines === 'ABC' ? ['AB', 'BC', 'CA'] : [lines]);

/** Magnitudes across the pairs that are there, 0 for the others, and to neutral where the system has one. */
export function voltsAt(volts: Float64Array, bus: number, system: System, lines: PhasePair): LineVolts {
  const phasors: readonly Phasor[] = [0, 1, 2].map((line) => phasorAt(volts, 3 * bus + line));
  const across = (pair: 'AB' | 'BC' | 'CA', i: number): number =>
    pairsOf(lines).includes(pair) ? magnitude(minus(phasors[i]!, phasors[(i + 1) % 3]!)) : 0;
  const pairs = { AB: across('AB', 0), BC: across('BC', 1), CA: across('CA', 2) };
  if (system.neutral === null) return pairs;
  const toN = (line: 'A' | 'B' | 'C', i: number): object =>
    lines.includes(line) ? { [`${line}N`]: magnitude(phasors[i]!) } : {};
  return { ...pairs, ...toN('A', 0), ...toN('B', 1), ...toN('C', 2) };
}

function ampsAt(amps: Float64Array, bus: number, system: System): LineAmps {
  const [A, B, C] = [0, 1, 2].map((line) => magnitudeAt(amps, 3 * bus + line)) as [number, number, number];
  return system.neutral === null ? { A, B, C } : { A, B, C, N: magnitude(neutralAt(amps, bus)) };
}

const neutralAt = (amps: Float64Array, bus: number): Phasor =>
  plus(plus(phasorAt(amps, 3 * bus), phasorAt(amps, 3 * bus + 1)), phasorAt(amps, 3 * bus + 2));
