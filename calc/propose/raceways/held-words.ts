import { type SupportSpacings, supportFindings } from '../../../routing/checks/support/support-findings.ts';
import { isUpright } from '../../../routing/network/support/held-parts.ts';
import { type Steel, steelOf } from '../../../routing/network/support/steel-near.ts';
import { unheldStretches } from '../../../routing/network/support/unheld.ts';
import { distance } from '../../../routing/plane/space.ts';
import { OUT_OF_GROUND, risersOf } from '../../../routing/propose/raceways/lattice/ground-ways.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Raceway, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';

/** Feet of some raceways by what they lie in or hang from; legs that stand upright are in none. */
export interface HeldFeet {
  readonly ground: number;
  readonly steel: number;
  readonly stringers: number;
  /** Hangs from nothing that is drawn. */
  readonly air: number;
}

/** Feet of some raceways by what they lie in or hang from, with the stringers that are drawn on the site. */
export function heldFeet(site: Site, raceways: readonly Raceway[], spacings: SupportSpacings): HeldFeet {
  const steel = steelOf(site.members.filter(({ stringer }) => !stringer));
  const all = steelOf(site.members);
  let [ground, whole, loose, air] = [0, 0, 0, 0];
  for (const { path, place, method } of raceways) {
    const feet = levelFeet(path);
    if (place === 'underground') ground += feet;
    if (place !== 'overhead') continue;
    const long = (by: Steel): number =>
      unheldStretches(path, by, site.rules.hangReach)
        .filter(({ length }) => length > spacings[method].feet + SLIPS)
        .reduce((sum, { length }) => sum + length, 0);
    whole += feet;
    loose += long(steel);
    air += long(all);
  }
  // Without any steel all of it is taken to be held, by what is yet to be drawn.
  if (site.members.length === 0) return { ground, steel: 0, stringers: 0, air: whole };
  return { ground, steel: whole - loose, stringers: Math.max(0, loose - air), air };
}

const SLIPS = 1e-6;

const levelFeet = (path: Raceway['path']): number =>
  path.slice(1).reduce((sum, to, i) => (isUpright(path[i]!, to) ? sum : sum + distance(path[i]!, to)), 0);

/** Some of the raceways come up out of the ground under steel that no column is drawn for. */
const isUpWithoutColumn = (site: Site, raceways: readonly Raceway[]): boolean =>
  raceways.some(({ path, place }) => place === 'overhead' && path.some(([, , z]) => z === OUT_OF_GROUND)) &&
  !risersOf(site, steelOf(site.members)).areColumns;

/** So many raceways that hang from nothing are told one by one. */
const MOST_TOLD = 5;

/** What holds the new raceways, in words, and what of them nothing holds; the plan finds the same of them. */
export function heldWords(
  site: Site,
  fresh: ReadonlySet<string>,
  inAir: readonly string[],
  spacings: SupportSpacings,
): readonly string[] {
  const own = site.raceways.filter(({ id }) => fresh.has(id));
  if (own.length === 0) return [];
  const { ground, steel, stringers, air } = heldFeet(site, own, spacings);
  const print = (feet: number): string => printLength(feet, site.units, { inchParts: 1, decimals: 2 });
  const nothing = site.members.length === 0;
  const put = site.members.filter(({ id, stringer }) => stringer === true && fresh.has(id)).length;
  const parts = [
    ...(ground > 0.05 ? [`${print(ground)} lie in the ground`] : []),
    ...(steel > 0.05 && !nothing ? [`${print(steel)} hang from steel that is drawn`] : []),
    ...(stringers > 0.05
      ? [`${print(stringers)} from stringers${put > 0 ? `, ${counted(put, 'piece')} of them put in and priced` : ''}`]
      : []),
    ...(air > 0.05
      ? [`${print(air)} overhead ${nothing ? 'from steel that is yet to be drawn' : 'from nothing'}`]
      : []),
  ];
  const loose = nothing ? [] : supportFindings(site, spacings).filter(({ about: [id] }) => fresh.has(id ?? ''));
  const more = loose.length - MOST_TOLD;
  return [
    `Of them ${parts.join(', ')}; legs that stand upright are not counted.`,
    ...(nothing && air > 0.05
      ? [
          'No steel is drawn that they could hang from: they are taken to be held along their whole length, which nobody looked at. Draw the canopy, then propose again.',
        ]
      : []),
    ...(inAir.length > 0
      ? [
          `${inAir.slice(0, MOST_TOLD).join(', ')}${inAir.length > MOST_TOLD ? ` and ${inAir.length - MOST_TOLD} more` : ''}: neither steel that is drawn nor the ground leads there, so that a way hangs in the air.`,
        ]
      : []),
    ...(isUpWithoutColumn(site, own)
      ? ['No column is drawn under the steel: what comes up out of the ground there wants a post of its own.']
      : []),
    ...loose.slice(0, MOST_TOLD).map(({ says }) => says),
    ...(more > 0 ? [`And ${more} more of the new raceways hang from nothing at some place.`] : []),
  ];
}
