import { lineWay, type RowWay, rowWay, stretchWay } from '../../../routing/propose/rows/row-way.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';

/** A way that copies may follow each other, by what it runs along; `next` is null where nothing says how far. */
export interface ArrayWayOffer {
  readonly name: string;
  readonly degrees: number;
  readonly next: number | null;
}

/**
 * The ways that are offered for an array of what is selected, the best first: along the row of its stalls (of those
 * that its drops serve, where it has none of its own), along its raceway or its beam or purlin, along the line of its
 * columns, along the site's gridlines, across the sheet.
 */
export function arrayWays(site: Site, selection: readonly Ref[]): readonly ArrayWayOffer[] {
  const ids = (list: Ref['list']): ReadonlySet<string> =>
    new Set(selection.flatMap((ref) => (ref.list === list ? ref.id : [])));
  const { gridlines } = site;
  const rotation = gridlines.rotation ?? 0;
  const offers: (ArrayWayOffer | null)[] = [
    named('the row', rowWay(site.stalls, stallsIn(site, ids))),
    without(
      named(
        'the raceway',
        longest(site.raceways, ids('raceways'), ({ path }) => path),
      ),
    ),
    without(
      named(
        'the canopy',
        longest(site.members, ids('members'), ({ from, to }) => [from, to]),
      ),
    ),
    named('the columns', columnsWay(site, ids('columns'))),
    (gridlines.x.length > 0 || gridlines.y.length > 0) && rotation % 360 !== 0
      ? { name: 'the gridlines', degrees: ((rotation % 360) + 360) % 360, next: null }
      : null,
    { name: 'the sheet', degrees: 0, next: null },
  ];
  const there = offers.filter((offer) => offer !== null);
  const same = (a: ArrayWayOffer, b: ArrayWayOffer): boolean => Math.abs(a.degrees - b.degrees) < 1e-6;
  return there.filter((offer, i) => there.findIndex((other) => same(offer, other)) === i);
}

const named = (name: string, way: RowWay | null): ArrayWayOffer | null => way && { name, ...way };

/** How long a raceway or a member is says nothing of how far apart its copies are. */
const without = (offer: ArrayWayOffer | null): ArrayWayOffer | null => offer && { ...offer, next: null };

function stallsIn({ chargers }: Site, ids: (list: Ref['list']) => ReadonlySet<string>): ReadonlySet<string> {
  const own = ids('stalls');
  if (own.size > 0) return own;
  const drops = ids('drops');
  return new Set(chargers.flatMap(({ drop, stalls }) => (drops.has(drop) ? stalls : [])));
}

function longest<T extends { readonly id: string }>(
  elements: readonly T[],
  ids: ReadonlySet<string>,
  path: (element: T) => Parameters<typeof stretchWay>[0],
): RowWay | null {
  let found: RowWay | null = null;
  for (const element of elements) {
    const way = ids.has(element.id) ? stretchWay(path(element)) : null;
    if (way && way.next > (found?.next ?? 0)) found = way;
  }
  return found;
}

/** One column goes on from its neighbor by a bay. */
const columnsWay = ({ columns }: Site, ids: ReadonlySet<string>): RowWay | null =>
  lineWay(
    columns.flatMap(({ id, at }) => (ids.has(id) ? [at] : [])),
    columns.map(({ at }) => at),
  );
