import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Charger, Feeder, Load, Rules, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { BranchOhms } from '../../branches/equipment-branches.ts';
import { equipmentBranches } from '../../branches/equipment-branches.ts';
import { ohmsOf } from '../../branches/ohms-of.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import { isConductorSize } from '../../tables/sizes.ts';
import type { RacewayKind } from '../../tables/table.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import { treeOf } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { suitsVolts } from '../tree/system.ts';
import { feederAmpacity } from './feeder-ampacity.ts';
import { type ExistingFeeder, type FeederOption, type FeederWish, feederOptions } from './feeder-options.ts';
import { feederAmbients, feederWays } from './feeder-ways.ts';

/** One way of using a feeder that stands, beside what it is used for now. */
export interface FeederProspect extends FeederOption {
  /** This is how it is used now. */
  readonly asItIs: boolean;
}

/** What an existing feeder can carry. */
export type FeederProspects =
  | {
      readonly ok: true;
      readonly feeder: Feeder;
      /** Feet. */
      readonly length: number;
      /** What hangs beyond it in the site, all of it wished for at once. */
      readonly wish: FeederWish;
      readonly ways: readonly FeederProspect[];
    }
  | { readonly ok: false; readonly feeder: Feeder /** What is not known of it. */; readonly says: string };

/** Rating of a charger where none hangs beyond the feeder, A; common practice. */
const USUAL_AMPS = 32;

/** What each existing feeder of a site can carry, in the order of the feeders. */
export const feederProspects = (site: Site): readonly FeederProspects[] => {
  const existing = site.feeders.filter((feeder) => feeder.existing === true);
  if (existing.length === 0) return [];
  const design = designOf(site.rules);
  const ohms = ohmsOf(site, equipmentBranches(site, runsOf(site).runs, design));
  const tree = treeOf(site);
  const ways = feederWays(site, tree);
  const ambients = feederAmbients(design.tables, site.rules, ways, tree);
  return existing.map((feeder) => {
    const place = tree.placeOf.get(feeder.to);
    const length = place === undefined ? null : (ways.lengths[place] ?? null);
    const kind = place === undefined ? 'PVC' : (ways.kinds[place] ?? 'PVC');
    return prospectsOf(
      feeder,
      tree,
      wishOf(
        feeder,
        tree,
        site.chargers,
        site.loads,
        site.rules,
        ohms,
        (place === undefined ? undefined : ambients[place]) ?? site.rules.ambientC,
      ),
      length,
      kind,
      design.tables,
    );
  });
};

/** All that hangs beyond a feeder: its single-phase chargers at the largest of their ratings, and the rest as load. */
const wishOf = kept(
  (
    feeder: Feeder,
    tree: SupplyTree,
    chargers: readonly Charger[],
    loads: readonly Load[],
    rules: Rules,
    ohms: readonly (BranchOhms | null)[],
    ambientC: number,
  ): FeederWish => {
    const beyond = equipmentBeyond(feeder, tree);
    const own: Charger[] = [];
    let otherVa = 0;
    let branch: BranchOhms = { r: 0, x: 0 };
    chargers.forEach((charger, i) => {
      if (!beyond.has(charger.from)) return;
      if (charger.phases === 3) otherVa += Math.sqrt(3) * charger.volts * charger.amps;
      else own.push(charger);
      const one = ohms[i] ?? null;
      if (one !== null && Math.hypot(one.r, one.x) > Math.hypot(branch.r, branch.x)) branch = one;
    });
    for (const load of loads) if (load.generation !== true && beyond.has(load.from)) otherVa += load.va;
    const volts = voltsOf(tree, own[0]?.from ?? feeder.to);
    const nominal = designOf(rules).tables.nominalVolts.chargers;
    return {
      chargers: own.length,
      amps: own.length === 0 ? USUAL_AMPS : Math.max(...own.map(({ amps }) => amps)),
      panelVolts: nominal.find((each) => volts !== null && suitsVolts(volts, each)) ?? nominal[0],
      powerFactor: rules.powerFactor,
      otherVa,
      branch,
      ambientC,
      terminalC: rules.terminalC,
      chargingHours: rules.chargingHours,
    };
  },
);

const voltsOf = (tree: SupplyTree, equipment: string): number | null => {
  const place = tree.placeOf.get(equipment);
  return place === undefined ? null : tree.nodes[place]!.system.volts;
};

function equipmentBeyond(feeder: Feeder, tree: SupplyTree): ReadonlySet<string> {
  const beyond = new Set<string>();
  for (const { equipment, parent, feeder: own } of tree.nodes)
    if (own === feeder || (parent >= 0 && beyond.has(tree.nodes[parent]!.equipment.id))) beyond.add(equipment.id);
  return beyond;
}

function prospectsOf(
  feeder: Feeder,
  tree: SupplyTree,
  wish: FeederWish,
  length: number | null,
  raceway: RacewayKind,
  tables: CodeTables,
): FeederProspects {
  const place = tree.placeOf.get(feeder.to)!;
  const node = tree.nodes[place]!;
  const { size, metal } = feeder.conductor;
  const not = (says: string): FeederProspects => ({ ok: false, feeder, says });
  if (node.feeder !== feeder) return not(`${feeder.id} is left out of the supply.`);
  if (length === null) return not(`The length of ${feeder.id} is not known.`);
  if (feederIsOver(tables, node))
    return not(
      `${feeder.id} works at ${(node.primary ?? node.system).volts} V, over the ${tables.lowVoltage.upToVolts} V at which the tables end.`,
    );
  const { ambientC, terminalC } = wish;
  const known =
    isConductorSize(size) &&
    findImpedance(tables, size, metal, raceway) !== undefined &&
    feederAmpacity(tables, feeder.conductor, ambientC, terminalC) !== null;
  if (!known) return not(`The tables hold no ${size} ${metal} conductor.`);
  const { system } = tree.nodes[node.parent]!;
  if (system.phases !== 3) return not(`${feeder.id} is not three-phase.`);
  return worked(
    feeder,
    length,
    raceway,
    system.volts,
    node.primary === null ? null : (node.equipment.kva ?? 0),
    wish,
    tables,
  );
}

const worked = kept(
  (
    feeder: Feeder,
    length: number,
    raceway: RacewayKind,
    volts: number,
    kva: number | null,
    wish: FeederWish,
    tables: CodeTables,
  ): FeederProspects => {
    const { conductor, breakerAmps } = feeder;
    const all = optionsOf(tables, { conductor, raceway, length, breakerAmps, volts }, wish);
    return {
      ok: true,
      feeder,
      length,
      wish,
      ways: all
        // Chargers that take 208 or 240 V do not hang on 480 V.
        .filter((way) => way.kva !== null || tables.nominalVolts.chargers.some((each) => suitsVolts(way.volts, each)))
        .map((way) => ({ ...way, asItIs: way.volts === volts && way.kva === kva })),
    };
  },
);

/** Feeders that are alike, with as much beyond them, can be used in the same ways. */
const optionsOf = keptByKey(
  (feeder: ExistingFeeder, wish: FeederWish) => JSON.stringify([feeder, wish]),
  (tables: CodeTables, feeder, wish) => feederOptions(feeder, wish, tables),
);

/**
 * The ways to look at first: the one in use; at each voltage without a transformer; and at each voltage the smallest
 * transformer behind which all that is wished for runs at full rate, or where none does, the smallest with most.
 */
export function notableWays(ways: readonly FeederProspect[]): readonly FeederProspect[] {
  const best = new Map<number, FeederProspect>();
  for (const way of ways) {
    if (way.kva === null) continue;
    const other = best.get(way.volts);
    if (other === undefined || (!other.allAtFullRate && way.atFullRate > other.atFullRate)) best.set(way.volts, way);
  }
  return ways.filter((way) => way.asItIs || way.kva === null || best.get(way.volts) === way);
}
