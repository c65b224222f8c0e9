import { REACH } from '../../../routing/propose/rows/row-way.ts';
import { type Row, rowsOf, type Standing, wholeRows } from '../../../routing/propose/rows/rows-of.ts';
import type { Charger, Point2, Site } from '../../../routing/site/site.ts';
import type { ListName, Ref } from '../../document/change/element-lists.ts';

/** What of a selection can be numbered in order: elements of one kind, by the rows that they stand in. */
export interface Numberable {
  readonly list: ListName;
  readonly rows: readonly Row[];
  /** The whole rows of stalls of which only some are selected; null where nothing is left of their rows. */
  readonly whole: readonly Row[] | null;
}

/** The kinds in a selection of which there are several, or a row to go on with; with the chargers at selected drops. */
export function numberables(site: Site, selection: readonly Ref[]): readonly Numberable[] {
  const ids = new Map<ListName, Set<string>>();
  const put = (list: ListName, id: string): void => {
    ids.set(list, (ids.get(list) ?? new Set()).add(id));
  };
  for (const { list, id } of selection) put(list, id);
  const drops = ids.get('drops');
  for (const { id, drop } of site.chargers) if (drops?.has(drop)) put('chargers', id);
  return [...ids]
    .map(([list, chosen]): Numberable => {
      const rows = rowsIn(site, list, chosen);
      const whole = list === 'stalls' ? wholeOf(site, chosen) : [];
      return { list, rows, whole: count(whole) > count(rows) ? whole : null };
    })
    .filter(({ rows, whole }) => count(whole ?? rows) > 1);
}

/** How many things rows hold. */
export const count = (rows: readonly Row[]): number => rows.reduce((sum, row) => sum + row.length, 0);

function wholeOf({ stalls }: Site, chosen: ReadonlySet<string>): readonly Row[] {
  const depth = Math.max(0, ...stalls.flatMap((stall) => (chosen.has(stall.id) ? stall.depth : [])));
  return wholeRows(stalls, chosen, REACH * depth);
}

function rowsIn(site: Site, list: ListName, ids: ReadonlySet<string>): readonly Row[] {
  const all: readonly { readonly id: string }[] = site[list];
  const chosen = all.filter(({ id }) => ids.has(id)).map(({ id }) => id);
  const place = placesOf(site, list);
  const standing = chosen.flatMap((id): Standing[] => {
    const found = place(id);
    return found ? [{ id, at: found.at, heading: found.heading }] : [];
  });
  // What stands nowhere comes as it does in the file.
  const rest = chosen.filter((id) => !place(id));
  return [...rowsOf(standing), ...(rest.length > 0 ? [rest] : [])];
}

type Place = Pick<Standing, 'at' | 'heading'>;

/** Where the elements of a list stand in their rows: chargers and drops where the first stall does that they serve. */
function placesOf(site: Site, list: ListName): (id: string) => Place | null {
  const elements = new Map<string, Site[ListName][number]>(site[list].map((element) => [element.id, element]));
  const stalls = new Map(site.stalls.map((stall) => [stall.id, stall]));
  const drops = new Map(site.drops.map((drop) => [drop.id, drop]));
  const chargers = new Map(site.chargers.toReversed().map((charger) => [charger.drop, charger]));
  const served = (charger: Charger | undefined): Place | null => stalls.get(charger?.stalls[0] ?? '') ?? null;
  return (id) => {
    const element = elements.get(id);
    if (!element) return null;
    if ('drop' in element) return served(element) ?? here(drops.get(element.drop)?.box);
    if ('box' in element) return served(chargers.get(id)) ?? here(element.box);
    if ('heading' in element) return element;
    if ('at' in element) return here(element.at);
    if ('path' in element) return here(element.path[0]);
    if ('outline' in element) return here(element.outline[0]);
    if ('conductor' in element || 'va' in element) return null;
    return here(element.from);
  };
}

const here = (at: readonly number[] | undefined): Place | null =>
  at ? { at: [at[0]!, at[1]!] as Point2, heading: null } : null;
