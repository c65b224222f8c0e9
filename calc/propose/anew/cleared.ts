import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import type { Charger, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import type { Scope } from './scope.ts';

/** What of a scope is taken away before it is proposed anew. */
export interface Cleared {
  readonly file: SiteFile;
  /** Chargers that lost their drops, in the order of the file: taken out, to be put back in their places. */
  readonly chargers: readonly Charger[];
  readonly drops: ReadonlySet<string>;
  readonly raceways: ReadonlySet<string>;
  readonly pullpoints: ReadonlySet<string>;
}

/** Drops of which somebody recorded something where they hang: these stand. */
const recorded = ({ asBuilt = {}, records = [] }: SiteFile): ReadonlySet<string> =>
  new Set([...Object.keys(asBuilt), ...records.map(({ of }) => of)]);

/**
 * A file without what only a scope has: raceways in which none but its circuits lie, with the pull points on them; and
 * where drops are hung anew, its drops from which no other charger hangs, with their chargers. What is kept, what was
 * recorded as built, a pedestal, and a charger for several stalls stay.
 */
export function cleared(
  file: SiteFile,
  { chargers }: Scope,
  what: { readonly drops: boolean; readonly raceways: boolean },
  keep: ReadonlySet<string>,
): Cleared {
  const site = toSite(file);
  const pedestals = site.drops.filter(({ mount }) => mount === 'pedestal').map(({ id }) => id);
  const stands = new Set([...recorded(file), ...pedestals, ...keep]);
  const mayGo = site.chargers.filter(
    ({ id, drop, stalls }) => chargers.has(id) && stalls.length === 1 && !stands.has(drop) && !stands.has(id),
  );
  const going = new Set(mayGo.map(({ id }) => id));
  const held = new Set(site.chargers.filter(({ id }) => !going.has(id)).map(({ drop }) => drop));
  const out = what.drops ? (file.chargers ?? []).filter(({ id, drop }) => going.has(id) && !held.has(drop)) : [];
  const drops = new Set(out.map(({ drop }) => drop));
  const raceways = what.raceways ? ownRaceways(file, chargers, keep) : new Set<string>();
  const outIds = new Set(out.map(({ id }) => id));
  const none = new Set<string>();
  const bare = without(file, { chargers: outIds, drops, raceways, pullpoints: none });
  const before = looseIn(file);
  const pullpoints = new Set([...looseIn(bare)].filter((id) => !before.has(id) && !keep.has(id)));
  return {
    file: without(bare, { chargers: none, drops: none, raceways: none, pullpoints }),
    chargers: out,
    drops,
    raceways,
    pullpoints,
  };
}

/** Pull points on no raceway. */
const looseIn = (file: SiteFile): ReadonlySet<string> =>
  new Set(plan(toSite(file)).findings.flatMap(({ rule, about }) => (rule === 'loose-pull-point' ? about : [])));

/** Raceways in which circuits of some chargers lie and no other's, and no feeder. */
function ownRaceways(file: SiteFile, chargers: ReadonlySet<string>, keep: ReadonlySet<string>): ReadonlySet<string> {
  const site = toSite(file);
  const { runs } = plan(site);
  const shared = new Set([
    ...runs.flatMap(({ charger, raceways }) => (chargers.has(charger) ? [] : raceways)),
    ...feederRoutesOf(site).routes.flatMap(({ way }) => way?.raceways ?? []),
  ]);
  const own = runs.flatMap(({ charger, raceways }) => (chargers.has(charger) ? raceways : []));
  return new Set(own.filter((id) => !shared.has(id) && !keep.has(id)));
}

type List = 'chargers' | 'drops' | 'raceways' | 'pullpoints';

function without(file: SiteFile, gone: Readonly<Record<List, ReadonlySet<string>>>): SiteFile {
  const next: Record<string, unknown> = { ...file };
  for (const list of Object.keys(gone) as List[])
    if (gone[list].size > 0)
      next[list] = (file[list] as readonly { readonly id: string }[]).filter(({ id }) => !gone[list].has(id));
  return next as unknown as SiteFile;
}
