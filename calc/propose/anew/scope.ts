import { REACH } from '../../../routing/propose/rows/row-way.ts';
import { wholeRows } from '../../../routing/propose/rows/rows-of.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** What is to be proposed anew, as somebody says it. */
export type Asked =
  /** Elements by their ids: drops, chargers, stalls, raceways; a panel stands for all that it feeds. */
  | { readonly kind: 'only'; readonly ids: readonly string[] }
  /** The whole row in which a stall stands, named by it, by its label, or by a charger or drop for it. */
  | { readonly kind: 'row'; readonly of: string }
  /** All that a panel feeds. The panel stays. */
  | { readonly kind: 'panel'; readonly id: string };

/** The part of a lot that is proposed anew. */
export interface Scope {
  readonly chargers: ReadonlySet<string>;
  /** Stalls that those chargers serve, and those that were named and have none. */
  readonly stalls: ReadonlySet<string>;
}

export type Scoped = { readonly ok: true; readonly scope: Scope } | { readonly ok: false; readonly says: string };

/** What of a lot somebody means, or what is wrong with what was named. */
export function scopeOf(file: SiteFile, asked: Asked): Scoped {
  const site = toSite(file);
  switch (asked.kind) {
    case 'panel':
      return panelScope(site, asked.id);
    case 'row':
      return rowScope(site, asked.of);
    case 'only':
      return onlyScope(file, site, asked.ids);
  }
}

const found = (site: Site, chargers: ReadonlySet<string>, named: Iterable<string> = []): Scoped => {
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
  const own = site.chargers.filter(({ id }) => chargers.has(id)).flatMap(({ stalls }) => stalls);
  return {
    ok: true,
    scope: { chargers, stalls: new Set([...own, ...[...named].filter((id) => !served.has(id))]) },
  };
};

function panelScope(site: Site, id: string): Scoped {
  if (site.equipment.every((one) => one.id !== id))
    return {
      ok: false,
      says: `no equipment is called "${id}"; there is ${listed(site.equipment.map((one) => one.id))}`,
    };
  const fed = site.chargers.filter(({ from }) => from === id).map((one) => one.id);
  return fed.length === 0 ? { ok: false, says: `${id} feeds no charger` } : found(site, new Set(fed));
}

function rowScope(site: Site, of: string): Scoped {
  const byDrop = site.chargers.filter(({ id, drop }) => id === of || drop === of).flatMap(({ stalls }) => stalls);
  const seeds = site.stalls.filter(({ id, label }) => id === of || label === of || byDrop.includes(id));
  if (seeds.length === 0) return { ok: false, says: `no stall is called "${of}", and no charger or drop of one` };
  const depth = Math.max(...site.stalls.map((stall) => stall.depth));
  const row = new Set(wholeRows(site.stalls, new Set(seeds.map(({ id }) => id)), REACH * depth).flat());
  const chargers = site.chargers.filter(({ stalls }) => stalls.some((stall) => row.has(stall))).map(({ id }) => id);
  return found(site, new Set(chargers), row);
}

function onlyScope(file: SiteFile, site: Site, ids: readonly string[]): Scoped {
  const known = new Set(ELEMENT_LISTS.flatMap((list) => (file[list] ?? []).map(({ id }) => id)));
  const stray = ids.find((id) => !known.has(id));
  if (stray !== undefined) return { ok: false, says: `no element is called "${stray}"` };
  const named = new Set(ids);
  const stalls = new Set(site.stalls.map(({ id }) => id));
  const chargers = site.chargers.filter(
    (one) =>
      named.has(one.id) || named.has(one.drop) || named.has(one.from) || one.stalls.some((stall) => named.has(stall)),
  );
  const chosen = new Set(chargers.map(({ id }) => id));
  const bare = ids.filter((id) => stalls.has(id));
  return chosen.size + bare.length === 0
    ? { ok: false, says: `${listed(ids)}: neither drops, chargers, stalls nor a panel that feeds any` }
    : found(site, chosen, bare);
}

const MOST_LISTED = 12;
const listed = (ids: readonly string[]): string =>
  ids.length > MOST_LISTED ? `${ids.slice(0, MOST_LISTED).join(', ')} ...` : ids.join(', ');
