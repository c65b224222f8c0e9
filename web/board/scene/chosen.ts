import { remembered } from '../../../calc/memo.ts';
import type { Ref } from '../../document/element-lists.ts';
import type { MarksByList } from './differ.ts';
import type { Mark } from './mark.ts';
import { refOf } from './pick.ts';
import type { Scene, SceneList } from './scene.ts';

/** What the selection stands for on the board: its own marks, and the runs and drops of its chargers. */
export interface Chosen {
  readonly marks: MarksByList;
  readonly chargers: ReadonlySet<string>;
}

/** The marks that a selection puts in heavier ink. */
export const chosenMarks = remembered((scene: Scene, selection: readonly Ref[]): Chosen => {
  const ids = new Map<string, Set<string>>();
  for (const { list, id } of selection) ids.set(list, (ids.get(list) ?? new Set()).add(id));
  const own = (list: string, id: string): boolean => ids.get(list)?.has(id) ?? false;
  const chargers = new Set<string>();
  const drops = new Set(ids.get('drops') ?? []);
  for (const { id, drop } of scene.site.chargers) {
    if (!own('chargers', id) && !own('drops', drop)) continue;
    chargers.add(id);
    drops.add(drop);
  }
  const marks: { [L in SceneList]?: readonly Mark[] } = {};
  const pick = (list: SceneList, wanted: boolean, keep: (mark: Mark) => boolean): void => {
    if (!wanted) return;
    const items = (scene[list].items as readonly Mark[]).filter(keep);
    if (items.length > 0) marks[list] = items;
  };
  for (const list of [
    'stalls',
    'columns',
    'members',
    'keepouts',
    'aisles',
    'equipment',
    'feeders',
    'raceways',
    'pullpoints',
  ] as const) {
    const wanted = ids.get(list);
    pick(list, wanted !== undefined, (mark) => wanted!.has(refOf(mark)?.id ?? ''));
  }
  pick('drops', drops.size > 0, (mark) => mark.kind === 'drop' && drops.has(mark.drop.id));
  pick('runs', chargers.size > 0, (mark) => mark.kind === 'run' && chargers.has(mark.charger));
  return { marks, chargers };
});
