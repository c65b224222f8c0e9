import { plan } from '../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { propose } from '../../calc/propose/propose.ts';
import { racewaysPart } from '../../calc/propose/raceways/raceways-part.ts';
import { costOf } from '../../calc/takeoff/bid/cost.ts';
import { steadyNumbers } from '../../routing/propose/shared/steady-numbers.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { HANDS } from '../calc/propose/hand/hands.ts';
import { libraryLot } from './samples/library-lot.ts';

/** What a lot comes to, dollars, and how many of its findings fail. */
function figures(file: SiteFile) {
  const { findings, takeoff } = plan(toSite(file));
  const { cost, bySystem } = costOf(takeoff, INVENTED_LIST, 0);
  return { cost, branches: bySystem.branches, fails: findings.filter(({ severity }) => severity === 'fail').length };
}

/** Without the overhead raceways that only some circuits go along, and some more. */
function ruined(file: SiteFile, out: ReadonlySet<string>, also: string | undefined): SiteFile {
  const used = new Set(plan(toSite(file)).runs.flatMap(({ charger, raceways }) => (out.has(charger) ? [] : raceways)));
  return {
    ...file,
    raceways: file.raceways!.filter(({ id, place }) => place !== 'overhead' || (used.has(id) && id !== also)),
  };
}

/**
 * Ruin and recreate on the price of the whole plan (Schrimpf and others 2000): circuits next to one another, or a raceway
 * with all that hangs on it, lose their ways and get them anew beside those that stay; what is cheaper and fails no more
 * is kept. Dollars that are saved, and of the branches in the first place.
 */
export function savedByRuin(
  file: SiteFile,
  tries: number,
  seed: number,
): { readonly saved: number; readonly branches: number } {
  const random = steadyNumbers(seed);
  const first = figures(file);
  let [best, least] = [file, first.cost];
  const chargers = file.chargers!.map(({ id }) => id);
  const overhead = file.raceways!.filter(({ place }) => place === 'overhead').map(({ id }) => id);
  for (let i = 0; i < tries; i++) {
    const from = Math.floor(random() * chargers.length);
    const count = 1 + Math.floor(random() * Math.min(6, chargers.length));
    const out = new Set(Array.from({ length: count }, (_, k) => chargers[(from + k) % chargers.length]!));
    const also = random() < 0.3 ? overhead[Math.floor(random() * overhead.length)] : undefined;
    const next = racewaysPart(
      ruined(best, out, also),
      INVENTED_LIST,
      () => {},
      () => true,
      { isBounded: false, answers: 0, effort: 0.2 },
    ).file;
    const one = figures(next);
    if (one.fails <= first.fails && one.cost < least - 0.005) [best, least] = [next, one.cost];
  }
  return { saved: first.cost - least, branches: first.branches };
}

/** The lot of 24 stalls with its stalls at 60 degrees. */
function angled(): SiteFile {
  const { ground } = HANDS['24']();
  const lean = Math.PI / 3;
  return {
    ...ground,
    stalls: ground.stalls!.map((stall) => {
      const side = Math.sign(stall.at[1]);
      const along = stall.at[0] / Math.sin(lean);
      // So far out that heads stay on their side of the middle.
      const out = stall.depth * Math.sin(lean) + (stall.width / 2) * Math.cos(lean);
      return { ...stall, at: [along, side * out], heading: stall.heading - 30 };
    }),
  };
}

/** Without its canopy: what hangs there is taken to be held. */
function open(): SiteFile {
  const { columns, members, ...ground } = HANDS['24']().ground;
  return ground;
}

/** The library's lot with its equipment, and nothing that hangs or leads there. */
export function library(): SiteFile {
  const { drops, chargers, raceways, pullpoints, ...ground } = libraryLot();
  return ground;
}

/** What such a search saves on what is proposed for lots of several sizes and kinds, of the branches. */
export function savedOnLots() {
  const lots: Readonly<Record<string, SiteFile>> = {
    '8': HANDS['8']().ground,
    '16': HANDS['16']().ground,
    '24': HANDS['24']().ground,
    '24 at 60 degrees': angled(),
    '24 without canopy': open(),
    'library lot': library(),
  };
  return Object.entries(lots).map(([lot, ground]) => {
    const { file } = propose(ground, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
    return { lot, ...savedByRuin(file, 60, 2026) };
  });
}
