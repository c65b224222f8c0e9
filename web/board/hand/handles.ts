import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { positionsOf, type Ref } from '../../document/change/element-lists.ts';
import { type Camera, type ScreenPoint, toScreen, type Viewport } from '../camera.ts';
import type { HandleLook } from '../kinds/kind.ts';
import { boardKind, isMarked } from '../kinds/kinds.ts';

/** A handle of the selected element, with where it is drawn. */
export interface Handle extends HandleLook {
  readonly ref: Ref;
  readonly at: Point2;
}

const PLAIN: HandleLook = { shape: 'square', aside: [0, 0] };

/** The handles of what is selected; only a single element shows them. */
export function handlesOf(site: Site, selection: readonly Ref[], scale: number): readonly Handle[] {
  const [first] = selection;
  if (!first || selection.some(({ list, id }) => list !== first.list || id !== first.id)) return [];
  const { list, id } = first;
  // Lists that follow one another in a drag share the index of their ids.
  const element = site[list][positionsOf(site[list]).get(id) ?? -1];
  const parts = element && placedKind(list)?.parts?.of(element as never);
  if (!parts) return [];
  const look = isMarked(list) ? boardKind(list).handle : undefined;
  return parts.map(({ part, at }) => ({
    ref: { list, id, part },
    at: [at[0], at[1]],
    ...(look?.(part, parts, scale) ?? PLAIN),
  }));
}

/** Where a handle is drawn on the screen. */
export function handleOnScreen({ at, aside }: Handle, camera: Camera, view: Viewport): ScreenPoint {
  const { px, py } = toScreen(camera, view, at);
  return { px: px + aside[0], py: py + aside[1] };
}
