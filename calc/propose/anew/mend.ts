import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import type { Alternative } from '../../plan/compared/comparison.ts';
import { plan } from '../../plan/plan.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { failsOf } from '../forced-words.ts';
import { lengthIn } from '../in-file.ts';
import { withPullPoints } from '../raceways/pull-points.ts';
import { type Broken, brokenIn } from './broken.ts';
import { heldDrops } from './held-drops.ts';
import { nearerPanels } from './nearer-panels.ts';
import { proposeAnew } from './propose-anew.ts';
import type { Scope } from './scope.ts';

/** What a change broke, what it costs to leave it so, and what the cheapest mend of it alone comes to. */
export interface Mend {
  readonly broken: Broken;
  /** Of the lot as it is drawn: what fails in all, and the bid. */
  readonly left: { readonly fails: number; readonly price: number };
  /** Null where nothing was found that fails less and leaves all other runs as they are. */
  readonly mended: Mended | null;
}

export interface Mended {
  readonly file: SiteFile;
  readonly fails: number;
  readonly price: number;
  /** What is done, in a sentence. */
  readonly says: string;
}

/** A way to mend, not looked at yet. */
interface Try {
  readonly says: string;
  readonly make: () => SiteFile | null;
}

/** Rules that pull points alone can cure. */
const BY_PULL_POINTS: readonly string[] = ['bends', 'pull-length'];

/**
 * The cheapest mend of what a change broke and of nothing else: pull points, longer cords, other ways, another panel,
 * drops hung anew with their ways (which is to propose the broken part anew), larger conductors where the drop in volts
 * is too much, of these branches or of feeders that are ahead of them, each with or without the others. Fewer failing
 * findings come first, then the bid. Every run that is not broken goes on exactly as it did. Null where nothing is broken.
 * @param before the file before the change; null takes all that fails as broken
 * @param tell hears how many of the ways to mend have been looked at
 */
export function mend(
  file: SiteFile,
  before: SiteFile | null,
  prices: PriceList,
  tell: (done: number, of: number) => void = () => {},
  mayGoOn: () => boolean = () => true,
): Mend | null {
  const drawn = alternativeOf('', toSite(file), prices);
  const broken = brokenIn(drawn, before === null ? null : plannedOf(before));
  if (broken.chargers.length === 0) return null;
  const left = { fails: failsOf(drawn.plan.findings).length, price: drawn.cost.price };
  const tries = triesFor(file, drawn.site, broken, prices, mayGoOn);
  const others = new Set(drawn.site.chargers.map(({ id }) => id).filter((id) => !broken.chargers.includes(id)));
  const runs = runsOf(drawn, others);
  let best: Mended | null = null;
  const weigh = (next: SiteFile, planned: Alternative, says: string): void => {
    const fails = failsOf(planned.plan.findings).length;
    const { price } = planned.cost;
    if (fails >= left.fails || runsOf(planned, others) !== runs) return;
    if (best === null || fails < best.fails || (fails === best.fails && price < best.price - 0.005))
      best = { file: next, fails, price, says };
  };
  const withHeld = (next: SiteFile, planned: Alternative, says: string): void => {
    for (const one of heldDrops(next, planned, broken, prices))
      weigh(one.file, alternativeOf('', toSite(one.file), prices), says === '' ? one.says : `${says} ${one.says}`);
  };
  withHeld(file, drawn, '');
  for (const [done, { says, make }] of tries.entries()) {
    if (best !== null && !mayGoOn()) break;
    tell(done, tries.length);
    const next = make();
    if (next === null) continue;
    const planned = alternativeOf('', toSite(next), prices);
    weigh(next, planned, says);
    withHeld(next, planned, says);
  }
  return { broken, left, mended: best };
}

function plannedOf(file: SiteFile): Pick<Alternative, 'site' | 'plan'> {
  const site = toSite(file);
  return { site, plan: plan(site) };
}

/** Where some runs go, and along what, to compare. */
const runsOf = ({ plan: { runs } }: Pick<Alternative, 'plan'>, of: ReadonlySet<string>): string =>
  JSON.stringify(
    runs
      .filter(({ charger }) => of.has(charger))
      .map(({ charger, from, path, raceways }) => [charger, from, path, raceways]),
  );

function triesFor(
  file: SiteFile,
  site: Site,
  { chargers, findings }: Broken,
  prices: PriceList,
  mayGoOn: () => boolean,
): readonly Try[] {
  const broken = new Set(chargers);
  const scope = partOf(site, broken);
  const raceways = new Set(site.raceways.map(({ id }) => id));
  const anew = (from: SiteFile, what: 'raceways' | 'all', keep: ReadonlySet<string>): SiteFile =>
    proposeAnew(from, { what, scope, keep, cordsADrop: holdsOf(site, broken), prices }, () => {}, mayGoOn).file;
  const none = new Set<string>();
  const who = chargers.length === 1 ? chargers[0]! : `${chargers.length} chargers`;
  const longer = withLongerCords(file, site, broken);
  return [
    ...(findings.every(({ rule }) => BY_PULL_POINTS.includes(rule))
      ? [{ says: 'Pull points where conduits bend too much.', make: () => withPullPoints(file, broken).file }]
      : []),
    ...(longer === null ? [] : [{ says: `The longest cord that the rules allow for ${who}.`, make: () => longer }]),
    { says: `Raceway to ${who} beside what is laid.`, make: () => anew(file, 'raceways', raceways) },
    { says: `The way to ${who} laid anew.`, make: () => anew(file, 'raceways', none) },
    ...(longer === null
      ? []
      : [
          {
            says: `The longest cord that the rules allow for ${who}, and the way laid anew.`,
            make: () => anew(longer, 'raceways', none),
          },
        ]),
    ...nearerPanels(file, site, chargers).map(({ panel, file: fed }) => ({
      says: `${who} fed from ${panel}, the way laid anew.`,
      make: () => anew(fed, 'raceways', none),
    })),
    { says: `The drop of ${who} hung anew, with the way to it.`, make: () => anew(file, 'all', none) },
  ];
}

/** The scope of some chargers. */
export const partOf = (site: Site, chargers: ReadonlySet<string>): Scope => ({
  chargers,
  stalls: new Set(site.chargers.filter(({ id }) => chargers.has(id)).flatMap(({ stalls }) => stalls)),
});

/** Cords that the drops of some chargers are made for, the most of any. */
export function holdsOf(site: Site, chargers: ReadonlySet<string>): number {
  const drops = new Set(site.chargers.filter(({ id }) => chargers.has(id)).map(({ drop }) => drop));
  return Math.max(1, ...site.drops.filter(({ id }) => drops.has(id)).map(({ holds = 1 }) => holds));
}

/** The drops of some chargers with cords as long as they may be; null where none is shorter. */
function withLongerCords(file: SiteFile, site: Site, chargers: ReadonlySet<string>): SiteFile | null {
  const own = new Set(site.chargers.filter(({ id }) => chargers.has(id)).map(({ drop }) => drop));
  const short = new Set(
    site.drops.filter(({ id, cord }) => own.has(id) && cord < site.rules.cordLimit - 1e-6).map(({ id }) => id),
  );
  if (short.size === 0) return null;
  const cord = lengthIn(file.units, site.rules.cordLimit);
  return { ...file, drops: (file.drops ?? []).map((drop) => (short.has(drop.id) ? { ...drop, cord } : drop)) };
}
