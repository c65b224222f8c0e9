import { kept } from '../../../routing/kept/kept.ts';
import { positionsOf, type Ref } from '../../document/change/element-lists.ts';
import { boardKind, MARKED_LISTS } from '../kinds/kinds.ts';
import { chargersByDrop } from './chargers-by-drop.ts';
import type { MarksByList } from './differ.ts';
import { refOf, type SceneMark } from './mark.ts';
import { marksOf, type Scene, type SceneList } from './scene.ts';

/** What the selection stands for on the board: its own marks, and the runs and drops of its chargers. */
export interface Chosen {
  readonly marks: MarksByList;
  readonly chargers: ReadonlySet<string>;
}

/** The marks that a selection puts in heavier ink. Looked up by id: no list of the scene is gone through. */
export const chosenMarks = kept((scene: Scene, selection: readonly Ref[]): Chosen => {
  const { site, runs } = scene;
  const ids = new Map<string, Set<string>>();
  const add = (list: string, id: string): void => {
    const so = ids.get(list);
    if (so) so.add(id);
    else ids.set(list, new Set([id]));
  };
  for (const { list, id } of selection) add(list, id);
  const chargerPlaces = positionsOf(site.chargers);
  const placesOf = (list: Parameters<typeof positionsOf>[0], wanted: Iterable<string>): number[] => {
    const places = positionsOf(list);
    return [...wanted]
      .map((id) => places.get(id))
      .filter((place) => place !== undefined)
      .sort((a, b) => a - b);
  };
  const chargers = new Set(ids.get('chargers'));
  for (const drop of ids.get('drops') ?? [])
    for (const charger of chargersByDrop(site.chargers).get(drop) ?? []) chargers.add(charger);
  for (const charger of ids.get('chargers') ?? []) {
    const place = chargerPlaces.get(charger);
    if (place !== undefined) add('drops', site.chargers[place]!.drop);
  }
  const marks: { [L in SceneList]?: readonly SceneMark[] } = {};
  const keep = (list: SceneList, items: readonly SceneMark[]): void => {
    if (items.length > 0) marks[list] = items;
  };
  for (const list of MARKED_LISTS) {
    const wanted = ids.get(list);
    if (!wanted) continue;
    const { items } = marksOf(scene, list);
    // Feeders without their ends have no mark, so that these do not stand in order.
    if (boardKind(list).partial)
      keep(
        list,
        items.filter((mark) => wanted.has(refOf(mark)?.id ?? '')),
      );
    else
      keep(
        list,
        placesOf(site[list], wanted).map((place) => items[place]!),
      );
  }
  // Of runs, those without a path have nothing to draw.
  if (chargers.size > 0)
    keep(
      'runs',
      placesOf(site.chargers, chargers)
        .map((place) => runs.items[place]!)
        .filter(({ path }) => path.length > 1),
    );
  return { marks, chargers };
});
