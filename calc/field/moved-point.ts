import { copied } from '../../routing/kept/changed-places.ts';
import type { Point3, Site } from '../../routing/site/site.ts';

/** A point that is set out and could come to stand elsewhere. */
export interface MovablePoint {
  readonly list: 'drops' | 'pullpoints' | 'columns' | 'equipment';
  readonly id: string;
  /** Of a drop: which of the two; both where it is absent. */
  readonly part?: 'box' | 'retractor';
}

/** The site with one point so much elsewhere, feet; the site itself where there is no such point. */
export function siteWithMoved(site: Site, { list, id, part }: MovablePoint, by: Point3): Site {
  const elements: readonly { readonly id: string }[] = site[list];
  const index = elements.findIndex((each) => each.id === id);
  if (index < 0) return site;
  const next = elements.slice();
  next[index] = moved(elements[index] as Site['drops'][number], part, by) as (typeof elements)[number];
  return { ...site, [list]: copied(next, elements, [index]) };
}

type Placed = { readonly id: string } & Partial<{
  readonly box: Point3;
  readonly retractor: Point3;
  readonly at: readonly number[];
  readonly entry: Point3;
}>;

function moved(element: Placed, part: MovablePoint['part'], [dx, dy, dz]: Point3): Placed {
  const there = ([x, y, z]: Point3): Point3 => [x + dx, y + dy, z + dz];
  const { box, retractor, at, entry } = element;
  return {
    ...element,
    ...(box && part !== 'retractor' && { box: there(box) }),
    ...(retractor && part !== 'box' && { retractor: there(retractor) }),
    ...(at && { at: [at[0]! + dx, at[1]! + dy, ...(at.length > 2 ? [at[2]! + dz] : [])] }),
    ...(entry && { entry: there(entry) }),
  };
}
