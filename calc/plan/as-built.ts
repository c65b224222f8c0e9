import { copied } from '../../routing/kept/changed-places.ts';
import { kept } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { indexById } from '../../routing/site/ids.ts';
import { awayFromDrawing, dropAsBuilt } from '../../routing/site/place/as-built.ts';
import { registersOf } from '../../routing/site/records/registers.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { AsBuilt, Drop, Point3, Site } from '../../routing/site/site.ts';
import { type Margins, marginsOf } from './margins.ts';
import type { UncountedPlan } from './plan-shape.ts';
import { planned } from './planned.ts';

/** A charger as drawn and as built. */
export interface ChargerAsBuilt {
  readonly charger: string;
  readonly drawn: Margins;
  readonly built: Margins;
  /** Lengths of its run, feet; null without one, as where the box was built past the longest tap. */
  readonly run: { readonly drawn: number | null; readonly built: number | null };
}

/** A drop whose box or retractor was measured. */
export interface DropAsBuilt {
  /** With what was measured in place of what is drawn. */
  readonly drop: Drop;
  /** Feet from the drawing, of box and retractor the greater. */
  readonly away: number;
  readonly chargers: readonly ChargerAsBuilt[];
  /** What there is to say of it that the drawing gives no cause for. */
  readonly findings: readonly Finding[];
}

/** The lot with every measured place in it, held against the lot as drawn. The plan of the drawing is not touched. */
export interface LotAsBuilt {
  readonly site: Site;
  /** Its runs, cords and findings; it is not counted. */
  readonly plan: UncountedPlan;
  /** By id, in the order of the site's drops: those that were measured. */
  readonly drops: ReadonlyMap<string, DropAsBuilt>;
  /** All findings as built that the plan as drawn does not have. */
  readonly findings: readonly Finding[];
}

const NOTHING_BUILT: Site['asBuilt'] = new Map();

const builtDrop = kept(
  (drop: Drop, found: AsBuilt): Drop => (awayFromDrawing(drop, found) === 0 ? drop : dropAsBuilt(drop, found)),
);

const builtDrops = kept((drops: Site['drops'], asBuilt: Site['asBuilt']): Site['drops'] => {
  const changed: number[] = [];
  const built = drops.map((drop, i) => {
    const found = asBuilt.get(drop.id);
    const now = found ? builtDrop(drop, found) : drop;
    if (now !== drop) changed.push(i);
    return now;
  });
  return changed.length === 0 ? drops : copied(built, drops, changed);
});

/** The site with its drops where they were built, as far as they were measured; the same objects where they were not. */
export const siteAsBuilt = kept((site: Site): Site => {
  const drops = builtDrops(site.drops, site.asBuilt);
  const places = placesFound(site.records);
  if (site.asBuilt.size === 0 && places.size === 0) return site;
  return {
    ...site,
    drops,
    pullpoints: standing(site.pullpoints, places),
    columns: standing(site.columns, places),
    equipment: standing(site.equipment, places),
    asBuilt: NOTHING_BUILT,
    records: NO_RECORDS,
  };
});

const NO_RECORDS: Site['records'] = [];

/** Where pull points, columns and equipment were found, by their ids. */
const placesFound = kept(
  (records: Site['records']): ReadonlyMap<string, Point3> =>
    new Map(
      [...registersOf(records).values()].flatMap(({ of, what, part, now }) =>
        what === 'place' && part === 'at' && now?.place ? [[of, now.place] as const] : [],
      ),
    ),
);

/** Elements where they were found: equipment with where raceways enter it, columns on the ground. */
const standing = kept(
  <T extends { readonly id: string; readonly at: readonly number[]; readonly entry?: Point3 }>(
    elements: readonly T[],
    places: ReadonlyMap<string, Point3>,
  ): readonly T[] => {
    if (!elements.some(({ id }) => places.has(id))) return elements;
    return elements.map((element) => {
      const place = places.get(element.id);
      if (!place) return element;
      const by = element.at.map((value, axis) => place[axis]! - value);
      const entry = element.entry?.map((value, axis) => value + (by[axis] ?? 0));
      return { ...element, at: place.slice(0, element.at.length), ...(entry && { entry }) };
    });
  },
) as <T>(elements: readonly T[], places: ReadonlyMap<string, Point3>) => readonly T[];

/**
 * What the measured places do to cords, branches, voltages and clearances, beside the same as drawn: the site as built
 * planned once more. A box past the longest tap has no run.
 */
export const asBuiltOf = kept((drawn: UncountedPlan, site: Site): LotAsBuilt => {
  const built = siteAsBuilt(site);
  if (built === site) return { site, plan: drawn, drops: new Map(), findings: [] };
  const plan = planned(built, notCounted);
  const known = new Set(drawn.findings.map(findingKey));
  const findings = plan.findings.filter((finding) => finding.rule !== 'sound' && !known.has(findingKey(finding)));
  const before = marginsOf(drawn, site);
  const after = marginsOf(plan, built);
  const places = indexById(site.chargers);
  const chargersOf = new Map<string, string[]>();
  for (const { id, drop } of site.chargers) addTo(chargersOf, drop, id);
  const drops = site.drops.flatMap((drop, i): readonly (readonly [string, DropAsBuilt])[] => {
    const found = site.asBuilt.get(drop.id);
    if (!found?.box && !found?.retractor) return [];
    const own = chargersOf.get(drop.id) ?? [];
    const about = new Set([drop.id, ...own]);
    const chargers = own.map((charger): ChargerAsBuilt => {
      const place = places.get(charger)!;
      const run = { drawn: drawn.runs[place]?.length ?? null, built: plan.runs[place]?.length ?? null };
      return { charger, drawn: before.get(charger)!, built: after.get(charger)!, run };
    });
    const told = findings.filter((finding) => finding.about.some((id) => about.has(id)));
    return [[drop.id, { drop: built.drops[i]!, away: awayFromDrawing(drop, found), chargers, findings: told }]];
  });
  return { site: built, plan, drops: new Map(drops), findings };
});

/** What is built is bought as it was drawn. */
function notCounted(): never {
  throw new RangeError('the plan of a lot as built has no takeoff');
}

const findingKey = ({ rule, about, says }: Finding): string => [rule, ...about, says].join('\n');
