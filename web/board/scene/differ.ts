import { changedPlaces } from '../../../routing/kept/changed-places.ts';
import type { SceneMark } from './mark.ts';
import { SCENE_LISTS, type Scene, type SceneList } from './scene.ts';

/** What of one scene is not in another, list by list. */
export type MarksByList = { readonly [L in SceneList]?: readonly SceneMark[] };

/** The marks of `scene` that `other` does not hold. Only lists that differ are gone through. */
export function marksNotIn(scene: Scene, other: Scene): MarksByList {
  const found: { [L in SceneList]?: readonly SceneMark[] } = {};
  for (const list of SCENE_LISTS) {
    const own: readonly SceneMark[] = scene[list].items;
    const others: readonly SceneMark[] = other[list].items;
    if (own === others) continue;
    const missing = own.length === others.length ? oddOf(own, others) : strangersOf(own, others);
    if (missing.length > 0) found[list] = missing;
  }
  return found;
}

/** Of lists of one length, what differs place by place: an edit leaves the others where they are. */
function oddOf(own: readonly SceneMark[], others: readonly SceneMark[]): readonly SceneMark[] {
  return changedPlaces(own, others).map((i) => own[i]!);
}

function strangersOf(own: readonly SceneMark[], others: readonly SceneMark[]): readonly SceneMark[] {
  const held = new Set(others);
  return own.filter((mark) => !held.has(mark));
}
