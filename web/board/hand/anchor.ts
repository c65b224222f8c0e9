import { samePart } from '../../../routing/site/kinds/kind.ts';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { positionsOf, type Ref } from '../../document/change/element-lists.ts';

/** The point of an element, or of a handle of it, that comes to lie on the grid when it is moved. Feet. */
export function anchorOf(site: Site, { list, id, part }: Ref): Point2 | null {
  const kind = placedKind(list);
  // Lists that follow one another in a drag share the index of their ids.
  const element = site[list][positionsOf(site[list]).get(id) ?? -1] as never;
  if (!kind || !element) return null;
  const held = part && kind.parts?.of(element).find((one) => samePart(one.part, part));
  if (held) return [held.at[0], held.at[1]];
  return kind.anchor?.(element) ?? kind.points(element)[0] ?? null;
}
