import { kept } from '../../routing/kept/kept.ts';
import { keptEach } from '../../routing/kept/kept-list.ts';
import { concatenating, splitting } from '../../routing/kept/parts.ts';
import type { Run } from '../../routing/network/run.ts';
import { byId } from '../../routing/site/look-up.ts';
import type { Charger, Equipment, Site } from '../../routing/site/site.ts';
import type { Conduit, PlannedBox } from '../plan-file/branches.ts';
import { buriedOf, countBoxes, NO_BOXES, ownBoxes } from './boxes/boxes.ts';
import type { OpeningLoad } from './boxes/opening-load.ts';
import type { Design } from './design.ts';
import { feedsOf } from './feeds.ts';
import { type ConduitGround, conduitGround } from './ground.ts';
import { conduitNames, type IssuedNames, issuedNames, junctionNames } from './home-runs/conduit-names.ts';
import { shareConduits } from './home-runs/sharing.ts';
import { travelOrder } from './home-runs/travel-order.ts';
import { type BranchCircuit, type NamedHomeRun, named } from './named.ts';
import { type ConduitWay, wayOf } from './way.ts';

/** Ohms of one line of a branch, end to end. */
export interface BranchOhms {
  readonly r: number;
  readonly x: number;
}

/** The branches of one piece of equipment. */
export interface EquipmentBranches {
  readonly equipment: Equipment;
  /** Those that it feeds, in the order of the site. */
  readonly chargers: readonly Charger[];
  readonly homeRuns: readonly NamedHomeRun[];
  /** Of each charger; null without a run or where no conductor will do. */
  readonly circuits: readonly (BranchCircuit | null)[];
  /** Ohms of one line of each branch, likewise. */
  readonly ohms: readonly (BranchOhms | null)[];
  /** Those of its home runs, put together when they are asked for. */
  readonly conduits: readonly Conduit[];
  /** Boxes of its drops and junctions, put together when they are asked for, and how many they are. */
  readonly boxes: readonly PlannedBox[];
  readonly boxCount: number;
  /** Those of them that lie in the ground. */
  readonly buried: readonly PlannedBox[];
  /** What its home runs bring to pull points, and to drops that other equipment feeds too. */
  readonly shared: readonly OpeningLoad[];
  /** Chargers with a run whose load is past the tables. */
  readonly unsized: readonly Charger[];
}

const ownRuns = splitting<Run>();

/**
 * Branch circuits and conduits of every piece of equipment that feeds chargers, in the order of `feedsOf`. Takes the runs
 * in the order of the site's chargers. What a change does not touch is the same object as before.
 */
export function equipmentBranches(site: Site, runs: readonly Run[], design: Design): readonly EquipmentBranches[] {
  const ground = conduitGround(site);
  const feeds = feedsOf(site.chargers);
  const { conduits, boxes, circuits } = site.issued;
  const names = conduits.size === 0 ? null : issuedNames(conduits, site.chargers, circuits);
  const boxNames = boxes.size === 0 ? null : issuedNames(boxes, site.chargers, circuits);
  const parts = ownRuns(runs, feeds.partition);
  return byEquipment(
    [feeds.equipment, feeds.chargers, parts],
    [site.equipment, feeds.sharedDrops, ground, design, names, boxNames],
  );
}

const byEquipment = keptEach(
  (
    [id, chargers, runs]: readonly [string, readonly Charger[], readonly Run[]],
    [all, sharedDrops, ground, design, issued, boxes]: readonly [
      readonly Equipment[],
      ReadonlySet<string>,
      ConduitGround,
      Design,
      IssuedNames | null,
      IssuedNames | null,
    ],
  ): EquipmentBranches => {
    const equipment = byId(all).get(id);
    if (equipment === undefined) throw new RangeError(`${id} feeds a charger and is not in the site`);
    return branchesOf(equipment, chargers, sharedDrops, runs, ground, design, issued, boxes);
  },
);

const NONE_SHARED: readonly OpeningLoad[] = [];

const branchesOf = kept(
  (
    equipment: Equipment,
    chargers: readonly Charger[],
    sharedDrops: ReadonlySet<string>,
    runs: readonly Run[],
    ground: ConduitGround,
    design: Design,
    issued: IssuedNames | null,
    issuedBoxes: IssuedNames | null,
  ): EquipmentBranches => {
    const ways: ConduitWay[] = [];
    chargers.forEach((charger, i) => {
      const run = runs[i]!;
      if (run.charger !== charger.id) throw new RangeError(`run of ${run.charger} where that of ${charger.id} was due`);
      const way = wayOf(charger, run, ground);
      if (way !== null) ways.push(way);
    });
    const bundles = shareConduits(design, travelOrder(ways), issued?.whole.get(equipment.id) ?? null);
    const names = issued === null ? null : conduitNames(bundles, equipment.id, issued);
    const junctions = issuedBoxes === null ? null : junctionNames(bundles, equipment.id, issuedBoxes);
    const homeRuns = bundles.map((homeRun, i) =>
      named(homeRun, equipment.id, i + 1, names?.[i] ?? null, junctions?.[i] ?? null),
    );
    const byCharger = new Map<string, BranchCircuit>();
    for (const { circuits } of homeRuns) for (const circuit of circuits) byCharger.set(circuit.charger, circuit);
    const circuits = chargers.map((charger) => byCharger.get(charger.id) ?? null);
    const openings = kept(() => homeRuns.flatMap((homeRun) => homeRun.openings));
    const isShared = ({ kind, id }: OpeningLoad): boolean =>
      kind === 'pullpoint' || (kind === 'drop' && sharedDrops.has(id));
    const conduits = kept(() => homeRuns.flatMap((homeRun) => homeRun.conduits));
    const boxes = kept(() =>
      ownBoxes(
        openings().filter((opening) => !isShared(opening)),
        design,
      ),
    );
    const goesUnder = ways.some(({ points }) => points.some((point) => point[2] < 0));
    const opensShared = sharedDrops.size > 0 || ways.some(({ pulls }) => pulls.length > 0);
    return {
      equipment,
      chargers,
      homeRuns,
      circuits,
      ohms: circuits.map((circuit) => circuit?.branch.ohms ?? null),
      get conduits() {
        return conduits();
      },
      get boxes() {
        return boxes();
      },
      boxCount: countBoxes(homeRuns, sharedDrops),
      buried: goesUnder ? buriedOf(boxes()) : NO_BOXES,
      shared: opensShared ? openings().filter(isShared) : NONE_SHARED,
      unsized: ways.filter(({ charger }) => !byCharger.has(charger.id)).map(({ charger }) => charger),
    };
  },
);

const allConduits = concatenating<Conduit>();

/** All conduits, by equipment and home run. */
export const conduitsOf = (branches: readonly EquipmentBranches[]): readonly Conduit[] =>
  allConduits(branches.map(({ conduits }) => conduits));
