import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Equipment, Issued, Load, Site } from '../../../routing/site/site.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import type { LineBalance } from '../../plan-file/supply.ts';
import { type LegAmps, linesOfPairs } from '../load-flow/line-current.ts';
import { assignPhases } from '../phases/phases.ts';
import { issuedLines } from './issued-lines.ts';
import { loadAmps, type Placeable, placeLoads, singleLoadLines } from './load-lines.ts';
import { type SupplyNode, type SupplyTree, supplyTree, voltsHints } from './supply-tree.ts';

/** Which lines everything lies on: decided from the site alone, so that moving a drop changes none of it. */
export interface SupplyLines {
  readonly chargers: ReadonlyMap<string, PhasePair>;
  readonly loads: ReadonlyMap<string, Lines>;
  /** Lines that come in to each piece of equipment: all three, or a pair. */
  readonly equipment: ReadonlyMap<string, PhasePair>;
  /** Of chargers that were issued on other lines than the spread would give them: those lines. */
  readonly dealt: ReadonlyMap<string, PhasePair>;
  /** Of three-phase equipment with single-phase chargers: as assigned, and as plain rotation would have it. */
  readonly balance: ReadonlyMap<string, { readonly assigned: LineBalance; readonly rotation: LineBalance }>;
}

/** The supply tree of a site. */
export const treeOf = (site: Site): SupplyTree => supplyTree(site.equipment, site.feeders, voltsHints(site));

/**
 * The lines of every charger, load and single-phase panel. Single-phase chargers of three-phase equipment are spread over
 * AB, BC, CA so that the greatest line current of their rated amperes is the least possible, equal ones dealt in rotation
 * in the order of the file; where their number does not go into three, panels of one derived system start the rotation in
 * turn, so that odd circuits do not pile up on one pair. Loads and single-phase panels are then laid beside them.
 * What was issued stays on its lines where the equipment has them; the others stay where the spread has them.
 */
export const linesOf = (site: Site): SupplyLines => linesOfTree(treeOf(site), site.chargers, site.loads, site.issued);

const linesOfTree = kept(
  (tree: SupplyTree, chargers: readonly Charger[], loads: readonly Load[], issued: Issued): SupplyLines => {
    const result = {
      dealt: new Map<string, PhasePair>(),
      chargers: new Map<string, PhasePair>(),
      loads: new Map<string, Lines>(),
      equipment: new Map<string, PhasePair>(),
      balance: new Map<string, { assigned: LineBalance; rotation: LineBalance }>(),
    };
    const chargersOf = grouped(chargers);
    const loadsOf = grouped(loads);
    const turns = turnsOf(tree, chargersOf);
    const vaOf = downstreamVa(tree, chargersOf, loadsOf);
    const fedBy = tree.nodes.map((): SupplyNode[] => []);
    for (const node of tree.nodes) fedBy[node.parent]?.push(node);
    tree.nodes.forEach((node, place) => {
      const { id } = node.equipment;
      const incoming: PhasePair = result.equipment.get(id) ?? (phasesIn(node) === 1 ? 'AB' : 'ABC');
      result.equipment.set(id, incoming);
      const pair = node.primary === null ? incoming : node.system.phases === 1 ? 'AB' : 'ABC';
      const mine = chargersOf.get(id) ?? [];
      const stays = (circuit: string): Lines | undefined => issuedLines(issued, circuit, id, pair);
      if (node.system.phases === 1) for (const charger of mine) result.chargers.set(charger.id, pair);
      else assignChargers(node.equipment, mine, turns.get(id) ?? 0, stays, result);
      const feeds = fedBy[place]!;
      for (const fed of feeds) if (phasesIn(fed) === 1) result.equipment.set(fed.equipment.id, pair);
      layLoads(node, pair, mine, loadsOf.get(id) ?? [], feeds, vaOf, stays, result);
    });
    return result;
  },
);

const phasesIn = ({ system, primary }: SupplyNode): 1 | 3 => (primary ?? system).phases;

function grouped<T extends { readonly from: string }>(items: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    addTo(groups, item.from, item);
  }
  return groups;
}

/** By how many legs each panel turns its rotation: panels of one derived system in the order of their first chargers. */
function turnsOf(tree: SupplyTree, chargersOf: ReadonlyMap<string, readonly Charger[]>): ReadonlyMap<string, number> {
  const uneven = new Map<number, number>();
  const turns = new Map<string, number>();
  for (const [id, chargers] of chargersOf) {
    const place = tree.placeOf.get(id);
    if (place === undefined || chargers.filter(({ phases }) => phases === 1).length % 3 === 0) continue;
    const system = tree.derivedFrom[place]!;
    const before = uneven.get(system) ?? 0;
    turns.set(id, before % 3);
    uneven.set(system, before + 1);
  }
  return turns;
}

interface Making {
  readonly chargers: Map<string, PhasePair>;
  readonly dealt: Map<string, PhasePair>;
  readonly loads: Map<string, Lines>;
  readonly equipment: Map<string, PhasePair>;
  readonly balance: Map<string, { assigned: LineBalance; rotation: LineBalance }>;
}

type Stays = (circuit: string) => Lines | undefined;

const PAIRS = ['AB', 'BC', 'CA'] as const;

function assignChargers(
  equipment: Equipment,
  chargers: readonly Charger[],
  turn: number,
  stays: Stays,
  making: Making,
): void {
  const single = chargers.filter(({ phases }) => phases === 1);
  for (const { id, phases } of chargers) if (phases === 3) making.chargers.set(id, 'ABC');
  if (single.length === 0) return;
  const threePhaseAmps = chargers.reduce((sum, charger) => sum + (charger.phases === 3 ? charger.amps : 0), 0);
  const { assignment, balance } = dealt(
    equipment,
    single.map(({ amps }) => amps),
    threePhaseAmps,
    turn,
  );
  const legs: [number, number, number] = [0, 0, 0];
  assignment.forEach((dealtPair, i) => {
    const { id, amps } = single[i]!;
    const issued = stays(id);
    const pair = PAIRS.find((one) => one === issued) ?? dealtPair;
    if (pair !== dealtPair) making.dealt.set(id, dealtPair);
    making.chargers.set(id, pair);
    legs[PAIRS.indexOf(pair)]! += amps;
  });
  const isAsDealt = !single.some(({ id }) => making.dealt.has(id));
  making.balance.set(equipment.id, isAsDealt ? balance : { ...balance, assigned: balanceOf(legs, threePhaseAmps) });
}

/** Pairs of the single-phase chargers of one panel, remembered for it; panels alike are dealt once. */
const dealt = kept((_: Equipment, amps: readonly number[], threePhaseAmps: number, turn: number) =>
  dealtBy(DEALT, amps, threePhaseAmps, turn),
);

const DEALT = {};
const dealtBy = keptByKey(
  (amps: readonly number[], threePhaseAmps: number, turn: number) => `${amps.join()} ${threePhaseAmps} ${turn}`,
  (_: object, amps: readonly number[], threePhaseAmps: number, turn: number) => {
    const { assignment, legs } = assignPhases({ amps, connection: 'line-to-line', threePhaseAmps, turn });
    const rotated: [number, number, number] = [0, 0, 0];
    amps.forEach((one, i) => {
      rotated[i % 3]! += one;
    });
    const balance = {
      assigned: balanceOf([legs.AB, legs.BC, legs.CA], threePhaseAmps),
      rotation: balanceOf(rotated, threePhaseAmps),
    };
    return { assignment, balance };
  },
);

function balanceOf([ab, bc, ca]: LegAmps, threePhaseAmps: number): LineBalance {
  const extra = threePhaseAmps / Math.sqrt(3);
  const lines = linesOfPairs([ab + extra, bc + extra, ca + extra]);
  const worstLineAmps = Math.max(...lines);
  const mean = (lines[0] + lines[1] + lines[2]) / 3;
  return { worstLineAmps, imbalancePercent: Math.max(0, 100 * (worstLineAmps / mean - 1)) };
}

function layLoads(
  node: SupplyNode,
  pair: PhasePair,
  chargers: readonly Charger[],
  loads: readonly Load[],
  feeds: readonly SupplyNode[],
  vaOf: ReadonlyMap<string, number>,
  stays: Stays,
  making: Making,
): void {
  const { system } = node;
  const left = (circuit: string, choices: readonly Lines[]): readonly Lines[] => {
    const issued = stays(circuit);
    return issued !== undefined && choices.includes(issued) ? [issued] : choices;
  };
  // Beside the chargers as they were dealt: a charger that is issued elsewhere moves no load.
  const standing = chargers.map(({ id, amps }) => ({ lines: making.dealt.get(id) ?? making.chargers.get(id)!, amps }));
  const drawing: Placeable[] = [];
  const generating: Placeable[] = [];
  for (const load of loads) {
    if (load.phases === 3 && system.phases === 3) {
      making.loads.set(load.id, 'ABC');
      if (load.generation !== true) standing.push({ lines: 'ABC', amps: loadAmps(load, system, 'ABC') });
      continue;
    }
    const choices = left(load.id, singleLoadLines(system, pair, load.volts));
    const placeable = { id: load.id, amps: loadAmps(load, system, choices[0]!), choices };
    (load.generation === true ? generating : drawing).push(placeable);
  }
  const panels = system.phases === 1 ? [] : feeds.filter((fed) => phasesIn(fed) === 1);
  for (const { equipment, feeder } of panels) {
    const amps = (vaOf.get(equipment.id) ?? 0) / system.volts;
    drawing.push({ id: equipment.id, amps, choices: left(feeder!.id, PAIRS) });
  }
  const placed = placeLoads(drawing, standing);
  for (const { equipment } of panels) making.equipment.set(equipment.id, placed.get(equipment.id) as PhasePair);
  for (const { id, generation } of loads)
    if (generation !== true && placed.has(id)) making.loads.set(id, placed.get(id)!);
  for (const [id, lines] of placeLoads(generating, [])) making.loads.set(id, lines);
}

/** Rated volt-amperes of the chargers and loads on each piece of equipment and beyond. */
function downstreamVa(
  tree: SupplyTree,
  chargersOf: ReadonlyMap<string, readonly Charger[]>,
  loadsOf: ReadonlyMap<string, readonly Load[]>,
): ReadonlyMap<string, number> {
  const totals = tree.nodes.map(({ equipment: { id }, system }) => {
    const chargers = (chargersOf.get(id) ?? []).reduce((sum, charger) => sum + charger.amps * system.volts, 0);
    return (loadsOf.get(id) ?? []).reduce((sum, { va, generation }) => sum + (generation === true ? 0 : va), chargers);
  });
  for (let place = tree.nodes.length - 1; place >= 0; place--) {
    const { parent } = tree.nodes[place]!;
    if (parent >= 0) totals[parent]! += totals[place]!;
  }
  return new Map(tree.nodes.map(({ equipment }, place) => [equipment.id, totals[place]!]));
}
