import { chargersAnew, phasesAt } from '../../../calc/plan/plan-difference.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { changedPlaces, copied } from '../../../routing/kept/changed-places.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { type Box, boxOf, joinedBox, NO_BOX } from '../../../routing/plane/box.ts';
import { type BoxIndex, boxIndex } from '../../../routing/plane/box-index.ts';
import { offGrid } from '../../../routing/site/grid-frame.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Units } from '../../../routing/site/vocabulary.ts';
import { vehicleOf } from '../../../routing/standing/parked.ts';
import { samePositions } from '../../document/element-lists.ts';
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
import { type StallBand, stallBands } from './stall-bands.ts';

/** A site and its plan made ready for drawing and picking. Distances in feet. */
export interface Scene {
  readonly site: Site;
  readonly plan: Plan;
  readonly units: Units;
  readonly aisles: BoxIndex<AreaMark>;
  readonly keepouts: BoxIndex<AreaMark>;
  readonly canopies: readonly (readonly Point2[])[];
  /** Stalls side by side as one, for a look from far off. */
  readonly bands: readonly StallBand[];
  readonly members: BoxIndex<MemberMark>;
  readonly stalls: BoxIndex<StallMark>;
  readonly columns: BoxIndex<ColumnMark>;
  readonly equipment: BoxIndex<EquipmentMark>;
  readonly feeders: BoxIndex<FeederMark>;
  readonly raceways: BoxIndex<RacewayMark>;
  /** A mark for every run in the plan's order; those without a path lie nowhere, so that no search finds them. */
  readonly runs: BoxIndex<RunMark>;
  readonly pullpoints: BoxIndex<PullpointMark>;
  readonly drops: BoxIndex<DropMark>;
  /** What is looked at when the whole lot is shown: all of it but aisles and the utility's source. */
  readonly extent: Box;
  /** Everything that is drawn, the source and the ways to it too. */
  readonly whole: Box;
  /** The same without the ground that aisles cover. */
  readonly installed: Box;
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
export function sceneOf(site: Site, plan: Plan, last?: Scene): Scene {
  const was = last?.site;
  const same = (...parts: (keyof Site)[]): boolean =>
    was !== undefined && parts.every((part) => site[part] === was[part]);
  const kept = <L extends SceneList>(list: L, marks: readonly Mark[]): Scene[L] =>
    boxIndex(marks, ownBox, last && marksOf(last, list)) as unknown as Scene[L];
  // A list whose sources are the same objects is not gone through again: most edits touch one list of many.
  const each = <L extends Exclude<SceneList, 'feeders' | 'runs'>>(
    list: L,
    make: (source: Site[L][number]) => Mark,
    alsoSame = true,
  ): Scene[L] => {
    if (last && alsoSame && same(list)) return last[list];
    const before = alsoSame ? (was?.[list] as readonly Site[L][number][] | undefined) : undefined;
    if (before) keepPositions(site[list], before);
    return kept(list, remade<Site[L][number], Mark>(site[list], make, before, last && marksOf(last, list).items));
  };
  const { headClearance } = site.rules;
  const runs = runMarks(site, plan, same('chargers') ? last : undefined);
  const lists: Pick<Scene, SceneList> = {
    aisles: each('aisles', aisleMark),
    keepouts: each('keepouts', keepoutMark),
    members: each('members', memberMark),
    stalls: each(
      'stalls',
      (stall) => stallMark(stall, vehicleOf(stall, site), headClearance),
      same('vehicles') && headClearance === was?.rules.headClearance && site.rules.vehicle === was?.rules.vehicle,
    ),
    columns: each('columns', columnMark),
    equipment: each('equipment', equipmentMark),
    feeders: last && same('feeders', 'equipment') ? last.feeders : kept('feeders', feederMarks(site)),
    raceways: each('raceways', racewayMark),
    runs: last && runs === last.runs.items ? last.runs : kept('runs', runs),
    pullpoints: each('pullpoints', pullpointMark),
    drops: each('drops', dropMark),
  };
  return {
    site,
    plan,
    units: site.units,
    canopies: canopyOutlines(site.members),
    bands: stallBands(site.stalls),
    ...lists,
    extent: extentOf(site, lists),
    whole: joinedBoxes(lists, () => true),
    installed: joinedBoxes(lists, (name) => name !== 'aisles'),
  };
}

/** Marks of sources, those of the sources that are the same objects in the same places taken from before. */
function remade<Source, M>(
  sources: readonly Source[],
  make: (source: Source) => M,
  before: readonly Source[] | undefined,
  marks: readonly M[] | undefined,
): readonly M[] {
  if (!before || !marks || before.length !== sources.length) return sources.map((source) => make(source));
  const now = marks.slice();
  const places = changedPlaces(sources, before);
  for (const i of places) now[i] = make(sources[i]!);
  return copied(now, marks, places);
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

/** A mark for every run, path or none; runs stand in the order of the chargers. */
function runMarks({ chargers }: Site, plan: Plan, last: Scene | undefined): readonly RunMark[] {
  const changed = last && chargersAnew(plan, last.plan, chargers);
  const at = (i: number): RunMark => {
    const phases = phasesAt(plan, chargers, i);
    const before = last?.runs.items[i];
    const run = plan.runs[i]!;
    return before?.run === run && before.phases === phases ? before : runMark(run, phases, chargers[i]?.volts ?? 0);
  };
  if (!last || !changed) return plan.runs.map((_, i) => at(i));
  let marks: RunMark[] | null = null;
  const places: number[] = [];
  for (const i of changed) {
    const mark = at(i);
    if (mark === last.runs.items[i]) continue;
    marks ??= last.runs.items.slice();
    marks[i] = mark;
    places.push(i);
  }
  return marks
    ? copied(
        marks,
        last.runs.items,
        places.sort((a, b) => a - b),
      )
    : last.runs.items;
}

/** Lists of the same ids in the same places share the index of their ids. */
function keepPositions(list: readonly { readonly id: string }[], before: readonly { readonly id: string }[]): void {
  if (list.length !== before.length) return;
  for (const i of changedPlaces(list, before)) if (list[i]!.id !== before[i]!.id) return;
  samePositions(list, before);
}

/** Ids of the chargers on each drop. */
export const chargersByDrop = kept((chargers: Site['chargers']): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>();
  for (const { id, drop } of chargers) {
    addTo(found, drop, id);
  }
  return found;
});

function extentOf(site: Site, lists: Pick<Scene, SceneList>): Box {
  let extent = NO_BOX;
  // Aisles and the utility's source may reach far: they are drawn, but the lot is what one looks at.
  for (const name of SCENE_LISTS)
    if (name !== 'aisles' && name !== 'feeders' && name !== 'equipment')
      extent = joinedBox(extent, wholeOf(lists[name]));
  for (const mark of lists.equipment.items) if (mark.equipment.kind !== 'source') extent = joinedBox(extent, mark);
  if (extent.minX > extent.maxX) for (const name of SCENE_LISTS) extent = joinedBox(extent, wholeOf(lists[name]));
  if (extent.minX > extent.maxX) {
    const { x, y } = site.gridlines;
    if (x.length + y.length > 0)
      extent = boxOf(
        [...x.map(({ at }): Point2 => [at, 0]), ...y.map(({ at }): Point2 => [0, at])].map((at) =>
          offGrid(site.gridlines, at),
        ),
      );
  }
  return extent;
}

const joinedBoxes = (lists: Pick<Scene, SceneList>, counts: (name: SceneList) => boolean): Box =>
  SCENE_LISTS.reduce((box, name) => (counts(name) ? joinedBox(box, wholeOf(lists[name])) : box), NO_BOX);

/** The box round all items of a list, as its tree knows it; of the few that left the tree, where they are now as well. */
function wholeOf({
  tree,
  changed,
  items,
}: {
  tree: Box | null;
  changed: readonly number[];
  items: readonly Box[];
}): Box {
  let box = tree ? { minX: tree.minX, minY: tree.minY, maxX: tree.maxX, maxY: tree.maxY } : NO_BOX;
  for (const i of changed) box = joinedBox(box, items[i]!);
  return box;
}
