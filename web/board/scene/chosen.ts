import { kept } from '../../../routing/kept/kept.ts';
import { positionsOf, type Ref } from '../../document/element-lists.ts';
import type { MarksByList } from './differ.ts';
import type { Mark } from './mark.ts';
import { refOf } from './pick.ts';
import { chargersByDrop, type Scene, type SceneList } from './scene.ts';

/** What the selection stands for on the board: its own marks, and the runs and drops of its chargers. */
export interface Chosen {
  readonly marks: MarksByList;
  readonly chargers: ReadonlySet<string>;
}

/** Lists whose marks stand in the order of the site's own. */
const IN_SITE_ORDER = [
  'stalls',
  'columns',
  'members',
  'keepouts',
  'aisles',
  'equipment',
  'raceways',
  'pullpoints',
  'drops',
] as const satisfies readonly SceneList[];

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
  const marks: { [L in SceneList]?: readonly Mark[] } = {};
  const keep = (list: SceneList, items: readonly Mark[]): void => {
    if (items.length > 0) marks[list] = items;
  };
  for (const list of IN_SITE_ORDER) {
    const wanted = ids.get(list);
    if (!wanted) continue;
    keep(
      list,
      placesOf(site[list], wanted).map((place) => scene[list].items[place]!),
    );
  }
  // Feeders without their ends have no mark, and runs without a path none to draw: these do not stand in order.
  const feeders = ids.get('feeders');
  if (feeders)
    keep(
      'feeders',
      scene.feeders.items.filter((mark) => feeders.has(refOf(mark)?.id ?? '')),
    );
  if (chargers.size > 0)
    keep(
      'runs',
      placesOf(site.chargers, chargers)
        .map((place) => runs.items[place]!)
        .filter(({ path }) => path.length > 1),
    );
  return { marks, chargers };
});
