import type { Margins } from '../../../calc/margins.ts';
import { remembered } from '../../../calc/memo.ts';
import type { Plan } from '../../../calc/plan-shape.ts';
import { type Box, boxOf, joinedBox, NO_BOX } from '../../../routing/plane/box.ts';
import { type BoxIndex, boxIndex } from '../../../routing/plane/box-index.ts';
import { vehicleOf } from '../../../routing/reach/parked.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Units } from '../../../routing/site/vocabulary.ts';
import { leftLength } from '../../words/lengths.ts';
import { canopyOutlines } from './canopy.ts';
import type {
  AreaMark,
  ColumnMark,
  DropMark,
  EquipmentMark,
  FeederMark,
  Mark,
  MemberMark,
  PullpointMark,
  RacewayMark,
  RunMark,
  StallMark,
} from './mark.ts';
import {
  aisleMark,
  columnMark,
  dropMark,
  equipmentMark,
  feederMark,
  keepoutMark,
  memberMark,
  pullpointMark,
  racewayMark,
  runMark,
  stallMark,
} from './marks.ts';
import { severityById } from './severity.ts';

/** A site and its plan made ready for drawing and picking. Distances in feet. */
export interface Scene {
  readonly site: Site;
  readonly plan: Plan;
  readonly units: Units;
  readonly aisles: BoxIndex<AreaMark>;
  readonly keepouts: BoxIndex<AreaMark>;
  readonly canopies: readonly (readonly Point2[])[];
  readonly members: BoxIndex<MemberMark>;
  readonly stalls: BoxIndex<StallMark>;
  readonly columns: BoxIndex<ColumnMark>;
  readonly equipment: BoxIndex<EquipmentMark>;
  readonly feeders: BoxIndex<FeederMark>;
  readonly raceways: BoxIndex<RacewayMark>;
  readonly runs: BoxIndex<RunMark>;
  readonly pullpoints: BoxIndex<PullpointMark>;
  readonly drops: BoxIndex<DropMark>;
  /** What is looked at when the whole lot is shown: all of it but aisles and the utility's source. */
  readonly extent: Box;
}

/** The lists of a scene that hold marks, in the order in which they are drawn. */
export const SCENE_LISTS = [
  'aisles',
  'keepouts',
  'members',
  'stalls',
  'columns',
  'equipment',
  'feeders',
  'raceways',
  'runs',
  'pullpoints',
  'drops',
] as const satisfies readonly (keyof Scene)[];
export type SceneList = (typeof SCENE_LISTS)[number];

/**
 * The scene of a site and its plan. What did not change since `last` is taken from it: marks by identity, and the
 * trees that hold them, so that a drag builds no tree at each step.
 */
export function sceneOf(site: Site, plan: Plan, margins: ReadonlyMap<string, Margins>, last?: Scene): Scene {
  const severities = severityById(plan.findings, site.chargers);
  const was = last?.site;
  const same = (...parts: (keyof Site)[]): boolean =>
    was !== undefined && parts.every((part) => site[part] === was[part]);
  // A list whose sources are the same objects is not gone through again: most edits touch one list of many.
  const kept = <L extends SceneList>(list: L, unchanged: boolean, marks: () => readonly Mark[]): Scene[L] =>
    last && unchanged ? last[list] : (boxIndex(marks(), ownBox, last && marksOf(last, list)) as unknown as Scene[L]);
  const lists: Pick<Scene, SceneList> = {
    aisles: kept('aisles', same('aisles'), () => site.aisles.map(aisleMark)),
    keepouts: kept('keepouts', same('keepouts'), () => site.keepouts.map(keepoutMark)),
    members: kept('members', same('members'), () => site.members.map(memberMark)),
    stalls: kept('stalls', same('stalls', 'vehicles', 'rules'), () =>
      site.stalls.map((stall) => stallMark(stall, vehicleOf(stall, site), site.rules.headClearance)),
    ),
    columns: kept('columns', same('columns'), () => site.columns.map(columnMark)),
    equipment: kept('equipment', same('equipment', 'chargers') && plan === last?.plan, () =>
      site.equipment.map((each) => equipmentMark(each, severities.get(each.id) ?? null)),
    ),
    feeders: kept('feeders', same('feeders', 'equipment'), () => feederMarks(site)),
    raceways: kept('raceways', same('raceways'), () => site.raceways.map(racewayMark)),
    runs: kept('runs', same('chargers') && plan.runs === last?.plan.runs && plan.circuits === last.plan.circuits, () =>
      runMarks(site, plan),
    ),
    pullpoints: kept('pullpoints', same('pullpoints'), () => site.pullpoints.map(pullpointMark)),
    drops: kept('drops', same('drops', 'chargers') && plan === last?.plan, () => dropMarks(site, severities, margins)),
  };
  return {
    site,
    plan,
    units: site.units,
    canopies: canopyOutlines(site.members),
    ...lists,
    extent: extentOf(site, lists),
  };
}

const ownBox = (mark: Mark): Box => mark;

/** A list of a scene, whatever its marks. */
export const marksOf = (scene: Scene, list: SceneList): BoxIndex<Mark> => scene[list] as unknown as BoxIndex<Mark>;

function feederMarks(site: Site): FeederMark[] {
  const equipment = new Map(site.equipment.map((each) => [each.id, each]));
  return site.feeders.flatMap((feeder) => {
    const from = equipment.get(feeder.from);
    const to = equipment.get(feeder.to);
    return from && to ? [feederMark(from, to, feeder.id, feeder.existing ?? false, feeder.length === undefined)] : [];
  });
}

function runMarks(site: Site, plan: Plan): RunMark[] {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const volts = new Map(site.chargers.map((charger) => [charger.id, charger.volts]));
  return plan.runs
    .filter((run) => run.path.length > 1)
    .map((run) => runMark(run, circuits.get(run.charger)?.phases ?? null, volts.get(run.charger) ?? 0));
}

function dropMarks(
  site: Site,
  severities: ReturnType<typeof severityById>,
  margins: ReadonlyMap<string, Margins>,
): DropMark[] {
  const chargersAt = chargersByDrop(site.chargers);
  return site.drops.map((drop) => {
    let severity = severities.get(drop.id) ?? null;
    let shortest = 0;
    for (const charger of chargersAt.get(drop.id) ?? []) {
      const own = severities.get(charger) ?? null;
      if (own === 'fail' || (own === 'warn' && severity !== 'fail')) severity = own;
      shortest = Math.min(shortest, margins.get(charger)?.cord?.left ?? 0);
    }
    const short = shortest < 0 && Number.isFinite(shortest) ? `${leftLength(shortest, site.units)} short` : '';
    return dropMark(drop, severity, short);
  });
}

/** Ids of the chargers on each drop. */
export const chargersByDrop = remembered((chargers: Site['chargers']): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>();
  for (const { id, drop } of chargers) {
    const so = found.get(drop);
    if (so) so.push(id);
    else found.set(drop, [id]);
  }
  return found;
});

function extentOf(site: Site, lists: Pick<Scene, SceneList>): Box {
  let extent = NO_BOX;
  const grow = (marks: readonly Mark[]): void => {
    for (const mark of marks) extent = joinedBox(extent, mark);
  };
  // Aisles and the utility's source may reach far: they are drawn, but the lot is what one looks at.
  for (const name of SCENE_LISTS)
    if (name !== 'aisles' && name !== 'feeders' && name !== 'equipment') grow(lists[name].items);
  grow(lists.equipment.items.filter(({ equipment }) => equipment.kind !== 'source'));
  if (extent.minX > extent.maxX) for (const name of SCENE_LISTS) grow(lists[name].items);
  if (extent.minX > extent.maxX) {
    const { x, y } = site.gridlines;
    if (x.length + y.length > 0)
      extent = boxOf([...x.map(({ at }): Point2 => [at, 0]), ...y.map(({ at }): Point2 => [0, at])]);
  }
  return extent;
}
