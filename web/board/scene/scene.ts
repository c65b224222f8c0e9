import type { UncountedPlan } from '../../../calc/plan/plan-shape.ts';
import { changedPlaces, copied } from '../../../routing/kept/changed-places.ts';
import { type Box, boxOf, joinedBox, NO_BOX } from '../../../routing/plane/box.ts';
import { type BoxIndex, boxIndex } from '../../../routing/plane/box-index.ts';
import { offGrid } from '../../../routing/site/place/grid-frame.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { samePositions } from '../../document/change/element-lists.ts';
import { boardKind, MARKED_LISTS, type MarkedList, type MarkIn } from '../kinds/kinds.ts';
import { canopyOutlines } from './canopy.ts';
import type { RunMark, SceneMark } from './mark.ts';
import { runMarks } from './run-marks.ts';
import { type StallBand, stallBands } from './stall-bands.ts';

/** The lists of a scene that hold marks. */
export const SCENE_LISTS = [...MARKED_LISTS, 'runs'] as const;
export type SceneList = MarkedList | 'runs';

type MarkLists = { readonly [L in MarkedList]: BoxIndex<MarkIn<L>> };

/** A site and its plan made ready for drawing and picking. Distances in feet. */
export interface Scene extends MarkLists {
  readonly site: Site;
  readonly plan: UncountedPlan;
  readonly units: Units;
  readonly canopies: readonly (readonly Point2[])[];
  /** Stalls side by side as one, for a look from far off. */
  readonly bands: readonly StallBand[];
  /** A mark for every run in the plan's order; those without a path lie nowhere, so that no search finds them. */
  readonly runs: BoxIndex<RunMark>;
  /** What is looked at when the whole lot is shown: all of it but aisles and the utility's source. */
  readonly extent: Box;
  /** Everything that is drawn, the source and the ways to it too. */
  readonly whole: Box;
  /** The same without the ground that aisles cover. */
  readonly installed: Box;
}

/**
 * The scene of a site and its plan. What did not change since `last` is taken from it: marks by identity, and the
 * trees that hold them, so that a drag builds no tree at each step.
 */
export function sceneOf(site: Site, plan: UncountedPlan, last?: Scene): Scene {
  const was = last?.site;
  const same = (...parts: (keyof Site)[]): boolean =>
    was !== undefined && parts.every((part) => site[part] === was[part]);
  const indexed = (list: SceneList, marks: readonly SceneMark[]): BoxIndex<SceneMark> =>
    boxIndex(marks, ownBox, last && marksOf(last, list));
  // A list whose sources are the same objects is not gone through again: most edits touch one list of many.
  const marked = (list: MarkedList): BoxIndex<SceneMark> => {
    const { mark, also, partial } = boardKind(list);
    const now = also?.(site) ?? [];
    const alsoSame = was !== undefined && (also?.(was) ?? []).every((part, i) => part === now[i]);
    if (last && alsoSame && same(list)) return marksOf(last, list);
    if (partial)
      return indexed(
        list,
        site[list].flatMap((element) => (mark(element, site) as SceneMark | null) ?? []),
      );
    const before = alsoSame ? was[list] : undefined;
    if (before) keepPositions(site[list], before);
    const make = (element: Site[MarkedList][number]): SceneMark => mark(element, site) as SceneMark;
    return indexed(
      list,
      remade<Site[MarkedList][number], SceneMark>(site[list], make, before, last && marksOf(last, list).items),
    );
  };
  const runs = runMarks(site, plan, last && same('chargers') ? { plan: last.plan, marks: last.runs.items } : undefined);
  const lists = {
    ...Object.fromEntries(MARKED_LISTS.map((list) => [list, marked(list)])),
    runs: last && runs === last.runs.items ? last.runs : indexed('runs', runs),
  } as unknown as Pick<Scene, SceneList>;
  return {
    site,
    plan,
    units: site.units,
    canopies: canopyOutlines(site.members),
    bands: stallBands(site.stalls),
    ...lists,
    extent: extentOf(site, lists),
    whole: joinedBoxes(lists, () => true),
    installed: joinedBoxes(lists, (name) => name === 'runs' || !boardKind(name).ground),
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

const ownBox = (mark: SceneMark): Box => mark;

/** A list of a scene, whatever its marks. */
export const marksOf = (scene: Scene, list: SceneList): BoxIndex<SceneMark> =>
  scene[list] as unknown as BoxIndex<SceneMark>;

/** Lists of the same ids in the same places share the index of their ids. */
function keepPositions(list: readonly { readonly id: string }[], before: readonly { readonly id: string }[]): void {
  if (list.length !== before.length) return;
  for (const i of changedPlaces(list, before)) if (list[i]!.id !== before[i]!.id) return;
  samePositions(list, before);
}

function extentOf(site: Site, lists: Pick<Scene, SceneList>): Box {
  let extent = NO_BOX;
  for (const name of SCENE_LISTS) {
    const counts = name === 'runs' ? undefined : boardKind(name).extent;
    if (!counts) extent = joinedBox(extent, wholeOf(lists[name]));
    else for (const mark of lists[name].items) if (counts(mark as never)) extent = joinedBox(extent, mark);
  }
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
