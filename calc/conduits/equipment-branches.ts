import type { Run } from '../../routing/network/run.ts';
import type { Charger, Equipment, Site } from '../../routing/site/site.ts';
import { picking, remembered } from '../memo.ts';
import type { Box, Conduit } from '../plan-shape.ts';
import type { BranchOhms } from '../supply/box-volts.ts';
import { ownBoxes } from './boxes.ts';
import type { Design } from './design.ts';
import { type Ground, groundOf } from './ground.ts';

import { type BranchCircuit, type NamedHomeRun, named } from './named.ts';
import type { OpeningLoad } from './opening-load.ts';
import { shareConduits } from './sharing.ts';
import { travelOrder } from './travel-order.ts';
import { type Way, wayOf } from './way.ts';

/** The branches of one piece of equipment. */
export interface EquipmentBranches {
  readonly equipment: Equipment;
  /** Where its chargers stand in the site's list. */
  readonly positions: readonly number[];
  readonly chargers: readonly Charger[];
  readonly homeRuns: readonly NamedHomeRun[];
  /** Of each of its chargers, in the order of `positions`; null without a run or where no conductor will do. */
  readonly circuits: readonly (BranchCircuit | null)[];
  /** Ohms of one line of each branch, likewise. */
  readonly ohms: readonly (BranchOhms | null)[];
  readonly conduits: readonly Conduit[];
  /** Boxes of its drops and junctions. */
  readonly boxes: readonly Box[];
  /** What its home runs bring to pull points, and to drops that other equipment feeds too. */
  readonly shared: readonly OpeningLoad[];
  /** Chargers with a run whose load is past the tables. */
  readonly unsized: readonly Charger[];
}

/**
 * Branch circuits and conduits of every piece of equipment that feeds chargers. Takes the runs in the order of the site's
 * chargers. What a change does not touch is the same object as before.
 */
export function equipmentBranches(site: Site, runs: readonly Run[], design: Design): readonly EquipmentBranches[] {
  const ground = groundOf(site);
  const fed = chargersFed(site.chargers);
  return site.equipment.flatMap((equipment) => {
    const feeds = fed.get(equipment.id);
    if (feeds === undefined) return [];
    return [branchesOf(equipment, feeds, ownRuns(runs, feeds.positions), ground, design)];
  });
}

const ownRuns = picking<Run>();

interface Feeds {
  readonly positions: readonly number[];
  readonly chargers: readonly Charger[];
  /** Drops of chargers that different equipment feeds. */
  readonly shared: ReadonlySet<string>;
}

const chargersFed = remembered((chargers: readonly Charger[]): ReadonlyMap<string, Feeds> => {
  const fed = new Map<string, { positions: number[]; chargers: Charger[]; shared: Set<string> }>();
  const shared = new Set<string>();
  const feederOf = new Map<string, string>();
  chargers.forEach((charger, position) => {
    const other = feederOf.get(charger.drop);
    if (other === undefined) feederOf.set(charger.drop, charger.from);
    else if (other !== charger.from) shared.add(charger.drop);
    const feeds = fed.get(charger.from);
    if (feeds === undefined) fed.set(charger.from, { positions: [position], chargers: [charger], shared });
    else {
      feeds.positions.push(position);
      feeds.chargers.push(charger);
    }
  });
  return fed;
});

const branchesOf = remembered(
  (
    equipment: Equipment,
    { positions, chargers, shared }: Feeds,
    runs: readonly Run[],
    ground: Ground,
    design: Design,
  ): EquipmentBranches => {
    const ways: Way[] = [];
    chargers.forEach((charger, i) => {
      const run = runs[i]!;
      if (run.charger !== charger.id) throw new RangeError(`run of ${run.charger} where that of ${charger.id} was due`);
      const way = wayOf(charger, run, ground);
      if (way !== null) ways.push(way);
    });
    const homeRuns = shareConduits(design, travelOrder(ways)).map((homeRun, i) => named(homeRun, equipment.id, i + 1));
    const byCharger = new Map<string, BranchCircuit>();
    for (const { circuits } of homeRuns) for (const circuit of circuits) byCharger.set(circuit.charger, circuit);
    const circuits = chargers.map((charger) => byCharger.get(charger.id) ?? null);
    const openings = homeRuns.flatMap((homeRun) => homeRun.openings);
    const isShared = ({ kind, id }: OpeningLoad): boolean =>
      kind === 'pullpoint' || (kind === 'drop' && shared.has(id));
    const own = openings.filter((opening) => !isShared(opening));
    return {
      equipment,
      positions,
      chargers,
      homeRuns,
      circuits,
      ohms: circuits.map((circuit) => circuit?.branch.ohms ?? null),
      boxes: ownBoxes(own, design.tables),
      shared: openings.filter(isShared),
      conduits: homeRuns.flatMap(({ conduits }) => conduits),
      unsized: ways.filter(({ charger }) => !byCharger.has(charger.id)).map(({ charger }) => charger),
    };
  },
);

/** All conduits, by equipment and home run. */
export function conduitsOf(branches: readonly EquipmentBranches[]): readonly Conduit[] {
  return ([] as Conduit[]).concat(...branches.map(({ conduits }) => conduits));
}
